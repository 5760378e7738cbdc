/** Pages as a tagged PDF: every mark belongs to an element of the document, in the order in which it is read out, or to none. */
import type { Mark } from '../core/plane/mark.ts';
import type { Point } from '../core/plane/point.ts';
import { type Bounds, unionBounds } from '../core/plane/ring.ts';
import { ARTIFACT, type Role } from '../core/plane/role.ts';
import { printable, wordsBounds } from './lettering.ts';
import { type Doc, POINTS, paintMark } from './pdf-marks.ts';
import type { Chapter, Page } from './sheet.ts';

type Element = ReturnType<Doc['struct']>;

/** The name by which a link finds a page, from 0. */
export function pageName(index: number): string {
  return `page-${String(index + 1).padStart(5, '0')}`;
}

function cornersBounds(points: readonly Point<'paper'>[]): Bounds {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

function markBounds(mark: Mark<'paper'>): Bounds {
  if (mark.kind === 'words') return wordsBounds(mark);
  if (mark.kind === 'line') return cornersBounds(mark.points);
  if (mark.kind === 'area') return cornersBounds(mark.ring);
  const { at, radius } = mark;
  return { minX: at.x - radius, maxX: at.x + radius, minY: at.y - radius, maxY: at.y + radius };
}

/** From the page's top-left corner, in points, as the writer asks for it. */
function box({ minX, minY, maxX, maxY }: Bounds): [number, number, number, number] {
  return [minX * POINTS, minY * POINTS, maxX * POINTS, maxY * POINTS];
}

/** Neighbours with one role. */
interface RoleRun {
  readonly role: Role;
  readonly marks: Mark<'paper'>[];
}

/** What a mark without a role is: part of the page's drawing, or decoration where the page has nothing but rules without one. */
function pageRole({ marks, about }: Page): Role {
  const isDrawing = marks.some(({ role, kind }) => role === undefined && kind !== 'line');
  return isDrawing ? { tag: 'Figure', about } : ARTIFACT;
}

function roleRuns(page: Page): readonly RoleRun[] {
  const rest = pageRole(page);
  const runs: RoleRun[] = [];
  for (const mark of page.marks) {
    const role = mark.role ?? rest;
    const last = runs.at(-1);
    if (last?.role === role) last.marks.push(mark);
    else runs.push({ role, marks: [mark] });
  }
  return runs;
}

/** The bounds of all marks of each role on a page. */
function roleBounds(runs: readonly RoleRun[]): ReadonlyMap<Role, Bounds> {
  const bounds = new Map<Role, Bounds>();
  for (const { role, marks } of runs) {
    for (const mark of marks) {
      const own = markBounds(mark);
      const known = bounds.get(role);
      bounds.set(role, known === undefined ? own : unionBounds(known, own));
    }
  }
  return bounds;
}

/** Attributes that the writer has no option for. Its type of an element hides its dictionary. */
function setAttributes(element: Element, attributes: Readonly<Record<string, unknown>>): void {
  (element as unknown as { dictionary: { data: Record<string, unknown> } }).dictionary.data.A = attributes;
}

/** The chapters without chapters of their own, in the order of their pages. */
function leaves(chapters: readonly Chapter[]): readonly Chapter[] {
  return chapters.flatMap((chapter) => (chapter.chapters === undefined ? [chapter] : leaves(chapter.chapters)));
}

/** Paints pages one after the other, and builds the tree of elements. */
export function taggedPages(doc: Doc, chapters: readonly Chapter[]): { paint(page: Page, index: number): void } {
  const root = doc.struct('Document');
  doc.addStructure(root);
  const starts = leaves(chapters);
  const elements = new Map<Role, Element>();
  const cells = new Map<Role, number>();
  let section = root;
  let hasHeading = false;

  const emptyCells = (row: Role, until: number): void => {
    const parent = elements.get(row);
    for (let i = cells.get(row) ?? 0; i < until; i += 1) parent?.add(doc.struct('TD'));
    cells.set(row, Math.max(cells.get(row) ?? 0, until));
  };

  const made = (role: Role, bounds: Bounds | undefined): Element => {
    switch (role.tag) {
      case 'H1':
      case 'H2': {
        // The first heading of a document is of the first level, whatever it is on its page.
        const tag = hasHeading ? role.tag : 'H1';
        hasHeading = true;
        return doc.struct(tag);
      }
      case 'Figure': {
        const alt = printable(role.about).text;
        return doc.struct('Figure', { alt, ...(bounds === undefined ? {} : { bbox: box(bounds) }) });
      }
      case 'TH':
      case 'TD': {
        emptyCells(role.within, role.column);
        cells.set(role.within, role.column + role.span);
        const cell = doc.struct(role.tag);
        const scope = role.tag === 'TH' ? { Scope: 'Column' } : {};
        const span = role.span > 1 ? { ColSpan: role.span } : {};
        if (role.tag === 'TH' || role.span > 1) setAttributes(cell, { O: 'Table', ...scope, ...span });
        return cell;
      }
      default:
        return doc.struct(role.tag);
    }
  };

  const elementOf = (role: Role, bounds?: Bounds): Element => {
    const known = elements.get(role);
    if (known !== undefined) return known;
    const parent = 'within' in role ? elementOf(role.within) : section;
    const element = made(role, bounds);
    parent.add(element);
    elements.set(role, element);
    return element;
  };

  const paintRun = ({ role, marks }: RoleRun): void => {
    for (const [i, mark] of marks.entries()) {
      const goesOn = role.tag === 'Figure' || marks[i + 1]?.kind === 'words';
      paintMark(doc, mark, { goesOn });
    }
  };

  /** A line of contents is a link, which has to be ended on its own page. */
  const paintLink = (run: RoleRun, role: Extract<Role, { tag: 'TOCI' }>, bounds: Bounds): void => {
    const [item, reference, link] = [elementOf(role), doc.struct('Reference'), doc.struct('Link')];
    item.add(reference);
    reference.add(link);
    link.add(doc.markStructureContent('Link'));
    paintRun(run);
    doc.endMarkedContent();
    const text = run.marks.flatMap((mark) => (mark.kind === 'words' ? [printable(mark.text).text] : [])).join(' ');
    const [x, y, right, bottom] = box(bounds);
    // The writer wants its own kind of string, so that it is not taken for a name.
    const options = { structParent: link, Contents: new String(text) } as never;
    doc.goTo(x, y, right - x, bottom - y, pageName(role.page), options);
    link.end();
  };

  return {
    paint(page, index) {
      const begun = starts.find((chapter) => chapter.page === index);
      if (begun !== undefined) {
        section = doc.struct('Sect', { title: printable(begun.title).text });
        root.add(section);
      }
      const runs = roleRuns(page);
      const bounds = roleBounds(runs);
      for (const run of runs) {
        const { role } = run;
        const own = bounds.get(role);
        if (role.tag === 'Artifact') {
          doc.markContent('Artifact', { type: 'Layout' });
          paintRun(run);
          doc.endMarkedContent();
        } else if (role.tag === 'TOCI' && own !== undefined) {
          paintLink(run, role, own);
        } else {
          const element = elementOf(role, own);
          element.add(doc.markStructureContent(role.tag));
          paintRun(run);
          doc.endMarkedContent();
        }
      }
      // A row ends on its page: every row of a table has as many cells.
      for (const row of cells.keys()) if (row.tag === 'TR') emptyCells(row, row.columns);
      cells.clear();
    },
  };
}
