import ts from 'typescript';

/** A text of a source that a person could read on the screen or hear. */
export interface VisibleString {
  readonly line: number;
  /** What is filled in stands as `{}`. */
  readonly text: string;
}

/** Attributes whose value is shown or read aloud, of elements and of the app's own components. */
const SHOWN_ATTRIBUTES = new Set([
  ...['aria-label', 'aria-description', 'aria-roledescription', 'aria-valuetext', 'title', 'placeholder', 'alt'],
  ...['label', 'hint', 'note', 'legend', 'name', 'unit', 'says'],
]);
/** Attributes for the machine, whatever their text looks like. */
const MACHINE_ATTRIBUTES = new Set([
  ...['className', 'd', 'viewBox', 'transform', 'fontFamily', 'style', 'accept', 'id', 'key', 'role', 'rel'],
  ...['aria-describedby', 'aria-labelledby', 'aria-controls'],
]);
/** Two words, one with a capital letter, or one beside what is filled in: what no id, class or event looks like. */
const WORDS =
  /\p{L}{2,}[,.:;!?’'”)]* +[“(‘]?\p{L}|^\p{Lu}\p{Ll}+[.:…]?$|\p{L}{2,}[.:…!?]$|\p{L}{2,}[,:;.]? ?\{\}|\{\}[,:]? ?\p{L}{3,}/u;
const MEDIA_QUERY = /^\((prefers-|pointer|max-|min-|forced|any-)/;
/** Selectors of elements, and keys of this program such as `bend:2:1`, `drag pole-1` and `polewright.panel.`. */
const SELECTOR = /^[a-z]+(\[[^\]]+\])?(, ([a-z]+|\[[^\]]+\]|[a-z]+\[[^\]]+\]))+$/;
const JOINED_KEY = /^\p{Ll}+((:\{\})+| \{\}|(\.\p{Ll}+)*\.)$/u;
/** Properties whose text tells things apart and is not shown. */
const MACHINE_PROPERTIES = new Set(['key', 'keys', 'join']);
const KEYS = /^(Enter|Escape|Tab|Backspace|Delete|Home|End|Insert|Control|Shift|Alt|Meta|Page(Up|Down))$/;
const CSS_VALUE = /^(translate\(|@font-face|@page)/;
const LOOKUPS =
  /(\.(querySelector(All)?|closest|matches|startsWith|endsWith|addEventListener|includes|find|matchMedia|getItem)|^matchMedia)$/;

/** Texts of JSX, shown attributes, and literals that look like words. What is thrown is for whoever reads the console. */
export function visibleStrings(path: string, source: string): readonly VisibleString[] {
  const kind = path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true, kind);
  const found: VisibleString[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
    // What a key of the keyboard bears is the same in every language.
    if (ts.isJsxElement(node) && node.openingElement.tagName.getText(file) === 'kbd') return;
    if (ts.isNewExpression(node) && /Error$/.test(node.expression.getText(file))) return;
    const text = ts.isJsxText(node) ? node.text : literalText(node);
    const isSeen = ts.isJsxText(node) ? /\p{L}/u.test(node.text) : text !== undefined && isVisible(node, text, file);
    if (text !== undefined && isSeen) {
      const line = file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1;
      found.push({ line, text: text.replace(/\s+/g, ' ').trim() });
    }
    node.forEachChild(visit);
  };
  visit(file);
  return found;
}

function literalText(node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (!ts.isTemplateExpression(node)) return undefined;
  return node.head.text + node.templateSpans.map((span) => `{}${span.literal.text}`).join('');
}

function isVisible(node: ts.Node, text: string, file: ts.SourceFile): boolean {
  if (isForMachine(node, file) || [MEDIA_QUERY, SELECTOR, JOINED_KEY, CSS_VALUE].some((each) => each.test(text)))
    return false;
  const attribute = attributeAround(node, file);
  if (attribute !== undefined && MACHINE_ATTRIBUTES.has(attribute.name)) return false;
  const isShown = attribute?.isItsValue === true && SHOWN_ATTRIBUTES.has(attribute.name);
  if (isShown) return /\p{L}/u.test(text);
  return !KEYS.test(text) && WORDS.test(text);
}

/** Keys of objects, what is compared with, and what something is looked up by. */
function isForMachine(node: ts.Node, file: ts.SourceFile): boolean {
  const { parent } = node;
  if (ts.isPropertyAssignment(parent)) return parent.name === node || MACHINE_PROPERTIES.has(parent.name.getText(file));
  if (ts.isElementAccessExpression(parent) || ts.isCaseClause(parent) || ts.isLiteralTypeNode(parent)) return true;
  if (ts.isBinaryExpression(parent)) return /^([!=]==|in)$/.test(parent.operatorToken.getText(file));
  return ts.isCallExpression(parent) && parent.arguments[0] === node && LOOKUPS.test(parent.expression.getText(file));
}

/** The attribute that a literal stands in, and whether the literal is its value rather than a part of some expression. */
function attributeAround(node: ts.Node, file: ts.SourceFile): { name: string; isItsValue: boolean } | undefined {
  let isItsValue = true;
  for (let inner = node; inner.parent !== undefined; inner = inner.parent) {
    const outer = inner.parent;
    if (ts.isJsxAttribute(outer)) return { name: outer.name.getText(file), isItsValue };
    if (ts.isJsxElement(outer) || ts.isJsxSelfClosingElement(outer)) return undefined;
    const isChoice = ts.isConditionalExpression(outer) && outer.condition !== inner;
    const isFallback = ts.isBinaryExpression(outer) && outer.right === inner;
    const isWrapped = ts.isJsxExpression(outer) || ts.isParenthesizedExpression(outer);
    if (!isChoice && !isFallback && !isWrapped) isItsValue = false;
  }
  return undefined;
}
