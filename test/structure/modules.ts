import { readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';
import ts from 'typescript';

/** One import, re-export, dynamic import or worker address. */
export interface Import {
  /** A path below `src` for a module of ours, else the package's name. */
  readonly target: string;
  readonly ours: boolean;
  /** Gone after compiling. */
  readonly typeOnly: boolean;
  /** Loaded when asked for, not together with the module. */
  readonly later: boolean;
}

/** Something that a pure function may not touch. */
export interface Impurity {
  readonly line: number;
  readonly what: string;
}

export interface Module {
  readonly imports: readonly Import[];
  readonly impurities: readonly Impurity[];
}

/** Modules by their path below `src`, with forward slashes. */
export type Modules = ReadonlyMap<string, Module>;

const root = join(import.meta.dirname, '../../src');

/** The text of every module below `src`, without the tests. */
export function sourcesOnDisk(): Map<string, string> {
  const paths = ts.sys
    .readDirectory(root, ['.ts', '.tsx'])
    .map((file) => relative(root, file).split(sep).join('/'))
    .filter((path) => !/\.test\.tsx?$/.test(path));
  return new Map(paths.map((path) => [path, readFileSync(join(root, path), 'utf8')]));
}

/** Reads what each module imports and which impure things it touches. */
export function readModules(sources: ReadonlyMap<string, string>): Modules {
  return new Map(
    [...sources].map(([path, text]) => {
      const file = ts.createSourceFile(path, text, ts.ScriptTarget.ESNext, true);
      return [path, { imports: importsOf(file, path), impurities: impuritiesOf(file) }];
    }),
  );
}

function importsOf(file: ts.SourceFile, path: string): Import[] {
  const found: Import[] = [];
  const add = (specifier: ts.Node | undefined, typeOnly: boolean, later: boolean) => {
    if (specifier === undefined || !ts.isStringLiteralLike(specifier)) return;
    const ours = specifier.text.startsWith('.');
    const target = ours
      ? posix.join(posix.dirname(path), specifier.text).replace(/\?.*$/, '')
      : /^(@[^/]+\/)?[^/]+/.exec(specifier.text)?.[0];
    if (target !== undefined) found.push({ target, ours, typeOnly, later });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      add(node.moduleSpecifier, importsTypesOnly(node.importClause), false);
    } else if (ts.isExportDeclaration(node)) {
      add(node.moduleSpecifier, node.isTypeOnly, false);
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      add(node.argument.literal, true, false);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node.arguments[0], false, true);
    } else if (ts.isNewExpression(node) && isWorkerAddress(node)) {
      add(node.arguments?.[0], false, true);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function importsTypesOnly(clause: ts.ImportClause | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const named = clause.namedBindings;
  if (clause.name !== undefined || named === undefined || !ts.isNamedImports(named)) return false;
  return named.elements.length > 0 && named.elements.every(({ isTypeOnly }) => isTypeOnly);
}

/** `new URL('./worker.ts', import.meta.url)`, by which a worker is loaded. */
function isWorkerAddress(node: ts.NewExpression): boolean {
  return (
    node.expression.getText() === 'URL' && node.arguments?.[1]?.getText() === 'import.meta.url'
  );
}

const impureNames = new Set([
  'performance',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'requestAnimationFrame',
  'crypto',
  'globalThis',
]);
const impureMembers = new Set(['Date.now', 'Math.random']);
/** They read the time zone of the machine. */
const zoneBound =
  /^(getTimezoneOffset|[gs]et(FullYear|Month|Date|Day|Hours|Minutes|Seconds|Milliseconds))$/;

function impuritiesOf(file: ts.SourceFile): Impurity[] {
  const found: Impurity[] = [];
  const visit = (node: ts.Node): void => {
    const what = impurityAt(node);
    if (what !== undefined) {
      const { line } = file.getLineAndCharacterOfPosition(node.getStart());
      found.push({ line: line + 1, what });
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

function impurityAt(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node)) {
    const text = `${node.expression.getText()}.${node.name.text}`;
    if (impureMembers.has(text)) return text;
    return zoneBound.test(node.name.text) ? node.name.text : undefined;
  }
  if (ts.isNewExpression(node) && node.expression.getText() === 'Date') {
    return (node.arguments?.length ?? 0) === 0 ? 'new Date()' : undefined;
  }
  if (ts.isCallExpression(node) && node.expression.getText() === 'Date') return 'Date()';
  return ts.isIdentifier(node) && impureNames.has(node.text) && isReference(node)
    ? node.text
    : undefined;
}

/** Whether a name is read here, rather than being a key, a member or a declaration. */
function isReference(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isQualifiedName(parent) || ts.isTypeReferenceNode(parent)) return false;
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node;
  return !(
    ts.isPropertySignature(parent) ||
    ts.isPropertyDeclaration(parent) ||
    ts.isMethodDeclaration(parent)
  );
}
