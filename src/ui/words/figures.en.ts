import { createFormats } from './formats.ts';

/** How figures, marks and times are written in English. */
export const figures = createFormats({
  decimalPoint: '.',
  months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  date: (day, month, year) => `${day} ${month} ${year}`,
});
