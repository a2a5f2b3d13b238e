import { rm } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { TestProject } from 'vitest/node';
import { buildApp } from './build.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder of the production build that all journeys run on. */
    builtApp: string;
  }
}

/** Builds the app once for all journeys, or takes the build that EVENFALL_DIST names. */
export default async function setup(project: TestProject): Promise<(() => Promise<void>) | void> {
  const given = process.env['EVENFALL_DIST'];
  const folder = given === undefined ? await buildApp() : resolve(given);
  project.provide('builtApp', folder);
  if (given === undefined) return () => rm(folder, { recursive: true, force: true });
}
