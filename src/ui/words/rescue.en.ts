/** Words of getting out what the app cannot open. */
export const rescue = {
  act: 'Get what is stored as a file',
  empty: 'There is nothing in the storage to get out.',
  failed:
    'The storage gives nothing out now. Do not delete the app or its data. Restart the phone, then try again.',
};
