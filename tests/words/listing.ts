import { readFileSync } from 'node:fs';
import ts from 'typescript';

/** A text of the catalogue as a person would read it, with what is filled in between « and ». */
export interface ListedText {
  /** `ride.gapsTo`. */
  readonly key: string;
  readonly text: string;
}

type Words = { readonly [key: string]: unknown };

/** Samples of types that are no plain text: numbers and units that a sentence prints itself. */
const SAMPLES: Readonly<Record<string, unknown>> = {
  number: 3,
  boolean: true,
  Metres: 3.81,
  Radians: Math.PI / 6,
  Seconds: 95,
  LengthUnit: 'ft',
  Wall: 'west',
  'keyof typeof STAGE_NAMES': 'set',
};

/** Every text of one file of the catalogue, functions called with a sample for each parameter. */
export function listedTexts(path: string, words: Words, room: string): readonly ListedText[] {
  const file = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const listed: ListedText[] = [];
  const functions: ts.ArrowFunction[] = [];
  const visit = (node: ts.Node): void => {
    const isEntry = ts.isPropertyAssignment(node.parent ?? node) || ts.isArrayLiteralExpression(node.parent ?? node);
    if (ts.isArrowFunction(node) && isEntry) functions.push(node);
    else node.forEachChild(visit);
  };
  file.forEachChild((statement) => {
    if (
      ts.isVariableStatement(statement) &&
      statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
    )
      visit(statement);
  });
  let next = 0;
  const list = (value: unknown, key: string): void => {
    if (typeof value === 'string') listed.push({ key, text: value });
    else if (typeof value === 'function') {
      const declared = functions[next++];
      for (const values of samples(declared, file)) list(value(...values), key);
    } else if (typeof value === 'object' && value !== null) {
      for (const [name, inner] of Object.entries(value)) list(inner, `${key}.${name}`);
    }
  };
  list(words, room);
  return listed;
}

/** One set of values for a function, and a second with one of a thing where it counts something. */
function samples(declared: ts.ArrowFunction | undefined, file: ts.SourceFile): readonly (readonly unknown[])[] {
  const all = declared?.parameters ?? [];
  const values = all.map(({ name, type }) => sample(name.getText(file), type, file));
  const counts = all.some(({ name }) => name.getText(file) === 'count');
  if (!counts) return [values];
  return [values.map((value, i) => (all[i]?.name.getText(file) === 'count' ? 1 : value)), values];
}

function sample(name: string, type: ts.TypeNode | undefined, file: ts.SourceFile): unknown {
  if (type === undefined) return `«${name}»`;
  if (ts.isTypeOperatorNode(type) && type.operator === ts.SyntaxKind.ReadonlyKeyword)
    return sample(name, type.type, file);
  if (ts.isArrayTypeNode(type)) return [1, 2].map((i) => sample(`${name} ${i}`, type.elementType, file));
  if (ts.isTupleTypeNode(type))
    return type.elements.map((each, i) => sample(`${name} ${i + 1}`, each as ts.TypeNode, file));
  if (ts.isUnionTypeNode(type)) return sample(name, type.types[0], file);
  if (ts.isLiteralTypeNode(type) && ts.isStringLiteral(type.literal)) return type.literal.text;
  if (ts.isTypeLiteralNode(type)) {
    return Object.fromEntries(
      type.members.flatMap((member) =>
        ts.isPropertySignature(member)
          ? [[member.name.getText(file), sample(member.name.getText(file), member.type, file)]]
          : [],
      ),
    );
  }
  return SAMPLES[type.getText(file)] ?? `«${name}»`;
}
