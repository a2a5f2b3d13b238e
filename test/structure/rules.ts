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
  exifreader: ['app'],
  qr: ['ui'],
  fflate: ['exchange'],
};

/** Packages too heavy for the first script: they come in later parts. */
const laterPackages: readonly string[] = [
  'astronomy-engine',
  '@photostructure/tz-lookup',
  'uplot',
  'exifreader',
  'qr',
  'fflate',
];

/**
 * What an outing in the field needs from the first script on, as folders (with a slash at their end)
 * and modules: to start from a kept plan, to walk it with its readings and their fit, to read its
 * log with the ledger, to take the log off the phone.
 */
export const neededAtOnce: readonly string[] = [
  'outing/',
  'log/entries.ts',
  'log/frames.ts',
  'store/',
  'ui/places/outing/',
  'app/cueDesk.ts',
  'app/exposureCues.ts',
  'app/files.ts',
  'app/journal.ts',
  'app/keptGear.ts',
  'app/keptPlans.ts',
  'app/log.ts',
  'app/run.ts',
  'app/runLight.ts',
  'app/theme.ts',
  'exchange/journalFile.ts',
  'light/fit.ts',
  'light/forecast.ts',
  'plan/prepare.ts',
  'ui/places/log/ExportScreen.tsx',
  'ui/places/log/LogPlace.tsx',
  'ui/places/log/OutingScreen.tsx',
  'ui/shell/CannotStart.tsx',
];

/**
 * What only the desk needs, and what would bring it in: it comes with later parts. The acts on gear,
 * plans and sites, the reading of whatever was entered or comes from a file, what the practice
 * outing is made of, and the words of all that; every language but English. Of the outing only what it goes on without: what a
 * change of the list would cost, the clock that is photographed.
 */
export const neededLater: readonly string[] = [
  'ui/places/gear/',
  'ui/places/light/',
  'ui/places/plan/',
  'app/drafts.ts',
  'app/gear.ts',
  'app/gearFiles.ts',
  'app/light.ts',
  'app/logBesides.ts',
  'app/logFigures.ts',
  'app/order.ts',
  'app/pairJudging.ts',
  'app/pictures.ts',
  'app/plans.ts',
  'app/practice.ts',
  'app/readPicture.ts',
  'app/rescue.ts',
  'app/safetyCopy.ts',
  'app/taking.ts',
  'device/chosenFile.ts',
  'app/headset.ts',
  'device/headset.ts',
  'device/position.ts',
  'device/updates.ts',
  'exchange/anyFile.ts',
  'exchange/events.ts',
  'exchange/exif/',
  'exchange/frameTable.ts',
  'exchange/gearFile.ts',
  'exchange/journalOf.ts',
  'exchange/matching/',
  'exchange/pairTable.ts',
  'exchange/readJson.ts',
  'exchange/restore.ts',
  'exchange/sidecar/',
  'exchange/storageFile.ts',
  'gear/defaults.ts',
  'gear/edit.ts',
  'gear/firstHeat.ts',
  'gear/parse.ts',
  'gear/practice.ts',
  'gear/read.ts',
  'light/night.ts',
  'light/parse.ts',
  'light/practice.ts',
  'log/besides.ts',
  'log/ledger.ts',
  'log/pair/',
  'outing/changeCost.ts',
  'outing/clockFrame.ts',
  'plan/besides.ts',
  'plan/edit.ts',
  'plan/heatSeries.ts',
  'plan/fairOrder.ts',
  'plan/newPlan.ts',
  'plan/orderProblem.ts',
  'plan/parse.ts',
  'plan/practicePlan.ts',
  'plan/readyLists.ts',
  'science/ephemeris.ts',
  'store/dump.ts',
  'ui/shell/Rescue.tsx',
  'ui/places/log/DeskPart.tsx',
  'ui/places/log/FilterFields.tsx',
  'ui/places/outing/ClockFrame.tsx',
  'ui/places/outing/CostLine.tsx',
  'ui/places/outing/NotLeftNotice.tsx',
  'ui/places/outing/SafetyCopy.tsx',
  'ui/places/outing/codeDrawing.ts',
  'ui/shell/CueSection.tsx',
  'ui/shell/DeviceSection.tsx',
  'ui/shell/FirstStart.tsx',
  'ui/shell/KeyFields.tsx',
  'ui/shell/keptFocus.ts',
  'ui/shell/mainActKeys.ts',
  'ui/shell/useLanguage.ts',
  'ui/words/languageNames.ts',
  '*.de.ts',
  'ui/words/de.ts',
  'ui/words/clockFrame.en.ts',
  'ui/words/cueFields.en.ts',
  'ui/words/cost.en.ts',
  'ui/words/device.en.ts',
  'ui/words/faults.en.ts',
  'ui/words/gear.en.ts',
  'ui/words/gearHeat.en.ts',
  'ui/words/light.en.ts',
  'ui/words/judging.de.ts',
  'ui/words/judging.en.ts',
  'ui/words/logDesk.en.ts',
  'ui/words/pair.en.ts',
  'ui/words/plan.en.ts',
  'ui/words/planOrder.en.ts',
  'ui/words/rescue.en.ts',
  'ui/words/safetyCopy.en.ts',
];

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

/** Whether a module is named: by itself, with its folder, or by its end after a star. */
const named = (names: readonly string[], path: string): boolean =>
  names.some((name) => {
    if (name.startsWith('*')) return path.endsWith(name.slice(1));
    return name.endsWith('/') ? path.startsWith(name) : path === name;
  });

/** Names that name no module: what they stood for would be watched no more. */
export const emptyNames = (modules: Modules): string[] =>
  [...neededAtOnce, ...neededLater].filter(
    (name) => ![...modules.keys()].some((path) => named([name], path)),
  );

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

/** What comes with the first script. */
const firstScript = (modules: Modules) =>
  reach(modules, ['main.tsx'], ({ typeOnly, later }) => !typeOnly && !later);

/** Modules that the outing needs and that yet load later than the first script. */
export function lateModules(modules: Modules): string[] {
  const atOnce = firstScript(modules);
  const ever = reach(modules, ['main.tsx'], ({ typeOnly }) => !typeOnly);
  return [...ever.keys()].filter(
    (path) => named(neededAtOnce, path) && !named(neededLater, path) && !atOnce.has(path),
  );
}

/** Modules that only the desk needs and that yet come with the first script, each with its chain. */
export function earlyModules(modules: Modules): string[] {
  const atOnce = firstScript(modules);
  return [...atOnce.keys()]
    .filter((path) => named(neededLater, path))
    .map((path) => chainTo(atOnce, path).join(' -> '));
}

/** Every import by which a package that is to load later comes with the first script, as a chain. */
export function earlyPackages(modules: Modules): string[] {
  const atOnce = firstScript(modules);
  return [...atOnce.keys()].flatMap((path) =>
    (modules.get(path)?.imports ?? [])
      .filter(
        ({ target, typeOnly, later }) => !typeOnly && !later && laterPackages.includes(target),
      )
      .map(({ target }) => [...chainTo(atOnce, path), target].join(' -> ')),
  );
}
