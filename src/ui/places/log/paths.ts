/** The path under which backup and restore stand; no outing has such an id. */
export const FILES = 'files';

/** Of an outing: its pictures, and where they say something else than was logged. */
export const PICTURES = 'pictures';
export const BESIDE = 'beside';
