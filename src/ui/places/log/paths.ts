/** The path under which backup and restore stand; no outing has such an id. */
export const FILES = 'files';
