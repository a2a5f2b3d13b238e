/** Words of the clock that is photographed with each body. */
export const clockFrame = {
  title: 'Clock frame',
  why: 'Photograph this clock once with each body: the time in that picture tells how its clock stands.',
  show: 'Show the clock',
  clock: 'Local time',
  code: (text: string) => `Code: ${text}`,
  with: 'Photographed with',
  notYet: 'not yet',
  at: (time: string) => `at ${time}`,
};
