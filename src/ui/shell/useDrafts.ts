import { type DraftDesk, draftDesk } from '../../app/drafts.ts';
import { useApp } from './useApp.ts';

/** What has been entered and is not whole yet. For the places of the desk: it loads with them. */
export const useDrafts = (): DraftDesk => draftDesk(useApp().desks.drafts);
