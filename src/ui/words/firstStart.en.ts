/** Words of the first screen. */
export const firstStart = {
  does: 'Plan and walk a fair side-by-side test of camera bodies at dusk. Every frame is timed and logged, and what still differs is told cause by cause.',
  tryPractice: 'Try the practice outing',
  addBody: 'Add a body',
  restore: 'Restore a backup',
  installFirst:
    'Install first: in the browser, tap Share, then Add to Home Screen, and open Evenfall from there. The installed app keeps what is stored; a tab loses it after seven days without a visit, and nothing entered here would be in the app.',
};
