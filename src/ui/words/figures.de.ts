import { createFormats } from './formats.ts';

/** How figures, marks and times are written in German. */
export const figures = createFormats({
  decimalPoint: ',',
  months: [
    'Jan.',
    'Feb.',
    'März',
    'Apr.',
    'Mai',
    'Juni',
    'Juli',
    'Aug.',
    'Sept.',
    'Okt.',
    'Nov.',
    'Dez.',
  ],
  date: (day, month, year) => `${day}. ${month} ${year}`,
});
