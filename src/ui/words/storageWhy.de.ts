/** Why the storage did not do what was asked, and what to do; said by the Log and of files. */
export const storageWhy = {
  full: 'Das Telefon ist voll. Platz schaffen, dann noch einmal versuchen.',
  blocked: 'Ein anderes Fenster hält den Speicher fest. Es schließen, dann noch einmal versuchen.',
  newer: 'Eine neuere Version ist in einem anderen Fenster offen. Dieses neu laden.',
  closed: 'Der Browser hat den Speicher geschlossen. Noch einmal versuchen.',
  timeout: 'Der Speicher antwortet nicht. Noch einmal versuchen.',
  refused: 'Der Speicher hat abgelehnt. Die App neu laden.',
};
