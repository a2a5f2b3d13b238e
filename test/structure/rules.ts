import type { Import, Modules } from './modules.ts';

/** The folders whose functions know no clock, no chance, no storage and no screen. */
export const pureFolders = ['science', 'gear', 'light', 'plan', 'outing', 'log', 'exchange'];

/** Who may import whom: design, section 7. Each place may import from itself as well. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  science: [],
  gear: ['science'],
  light: ['gear', 'science'],
  plan: ['light', 'gear', 'science'],
  outing: ['plan', 'light', 'gear', 'science'],
  log: ['outing', 'plan', 'light', 'gear', 'science'],
  exchange: ['log', 'outing', 'plan', 'light', 'gear', 'science'],
  store: [],
  // The units alone, so that a duration keeps its unit on the way to a timer.
  device: ['science/units.ts'],
  app: [...pureFolders, 'store', 'device'],
  ui: [...pureFolders, 'app'],
  'main.tsx': ['ui', 'app', 'store', 'device'],
  'sw.ts': [],
};

/** What may be imported for its types only. */
const mayImportTypes: Readonly<Record<string, readonly string[]>> = { store: pureFolders };

/** Which place may use which package; one that is not named here has no place yet. */
const packagePlaces: Readonly<Record<string, readonly string[]>> = {
  preact: ['ui', 'main.tsx'],
  '@preact/signals': ['app', 'ui', 'main.tsx'],
  idb: ['store'],
  'workbox-window': ['device'],
  'workbox-precaching': ['sw.ts'],
  'astronomy-engine': ['science'],
  '@photostructure/tz-lookup': ['light'],
  uplot: ['ui'],
};

/** Packages too heavy for the first script: they come in later parts. */
const laterPackages: readonly string[] = ['astronomy-engine', '@photostructure/tz-lookup', 'uplot'];

/** Folders that an outing in the field needs from the first script on. */
const neededAtOnce = /^(outing|log|store)\//;

export const places = Object.keys(mayImport);

/** The folder of a module, or the module itself where it stands at the top. */
export const placeOf = (path: string): string => path.split('/')[0] ?? path;

const covers = (allowed: readonly string[], path: string): boolean =>
  allowed.some((each) => each === path || each === placeOf(path));

function allows(from: string, { target, ours, typeOnly }: Import): boolean {
  const place = placeOf(from);
  if (!ours) return (packagePlaces[target] ?? []).includes(place);
  if (!/\.tsx?$/.test(target) || placeOf(target) === place) return true;
  return (
    covers(mayImport[place] ?? [], target) ||
    (typeOnly && covers(mayImportTypes[place] ?? [], target))
  );
}

/** For each module the one by which it is first reached from a start. */
function reach(modules: Modules, starts: readonly string[], follow: (edge: Import) => boolean) {
  const from = new Map<string, string | undefined>(starts.map((start) => [start, undefined]));
  for (const path of from.keys()) {
    for (const edge of modules.get(path)?.imports ?? []) {
      if (follow(edge) && modules.has(edge.target) && !from.has(edge.target)) {
        from.set(edge.target, path);
      }
    }
  }
  return from;
}

function chainTo(from: ReadonlyMap<string, string | undefined>, path: string): string[] {
  const before = from.get(path);
  return before === undefined ? [path] : [...chainTo(from, before), path];
}

/**
 * Every import that the table forbids or that leads nowhere (its edges would be lost), as a chain
 * from the start of the app where there is one.
 */
export function forbiddenImports(modules: Modules): string[] {
  const from = reach(modules, ['main.tsx', 'sw.ts'], () => true);
  const leadsNowhere = ({ target, ours }: Import) =>
    ours && /\.tsx?$/.test(target) && !modules.has(target);
  return [...modules].flatMap(([path, { imports }]) =>
    imports
      .filter((edge) => leadsNowhere(edge) || !allows(path, edge))
      .map((edge) => {
        const end = leadsNowhere(edge) ? `${edge.target} (not there)` : edge.target;
        return [...chainTo(from, path), end].join(' -> ');
      }),
  );
}

/** Every impure thing in a pure folder, with its place. */
export function impureSciences(modules: Modules): string[] {
  return [...modules]
    .filter(([path]) => pureFolders.includes(placeOf(path)))
    .flatMap(([path, { impurities }]) =>
      impurities.map(({ line, what }) => `${path}:${line} uses ${what}`),
    );
}

/** Modules that the outing needs and that yet load later than the first script. */
export function lateModules(modules: Modules): string[] {
  const atOnce = reach(modules, ['main.tsx'], ({ typeOnly, later }) => !typeOnly && !later);
  const ever = reach(modules, ['main.tsx'], ({ typeOnly }) => !typeOnly);
  return [...ever.keys()].filter((path) => neededAtOnce.test(path) && !atOnce.has(path));
}

/** Every import by which a package that is to load later comes with the first script, as a chain. */
export function earlyPackages(modules: Modules): string[] {
  const atOnce = reach(modules, ['main.tsx'], ({ typeOnly, later }) => !typeOnly && !later);
  return [...atOnce.keys()].flatMap((path) =>
    (modules.get(path)?.imports ?? [])
      .filter(
        ({ target, typeOnly, later }) => !typeOnly && !later && laterPackages.includes(target),
      )
      .map(({ target }) => [...chainTo(atOnce, path), target].join(' -> ')),
  );
}
