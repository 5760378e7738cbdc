/**
 * What a mark is to somebody who is read to, as an element of a tagged page. Marks with one role, the same object, are one
 * element; elements stand in the order of their first marks. The tags are those of PDF (ISO 32000-1, 14.8.4).
 */
export type Role =
  | { readonly tag: 'H1' | 'H2' | 'P' | 'L' | 'Table' | 'TOC' }
  /** A picture, and what it shows in a sentence. */
  | { readonly tag: 'Figure'; readonly about: string }
  | { readonly tag: 'LI'; readonly within: Role }
  | { readonly tag: 'Lbl' | 'LBody'; readonly within: Role }
  /** Rows have so many columns. */
  | { readonly tag: 'TR'; readonly within: Role; readonly columns: number }
  /** In this column, from 0, and over so many; empty cells have no role. */
  | { readonly tag: 'TH' | 'TD'; readonly within: Role; readonly column: number; readonly span: number }
  /** A line of contents: leads to a page, from 0. */
  | { readonly tag: 'TOCI'; readonly within: Role; readonly page: number }
  /** Not read out: rules, page numbers, what is repeated on every page. */
  | { readonly tag: 'Artifact' };

/** The role of what is not read out. */
export const ARTIFACT: Role = { tag: 'Artifact' };

/** A paragraph of its own. */
export function paragraph(): Role {
  return { tag: 'P' };
}

/** Marks without a role as one picture. */
export function asFigure<M extends { readonly role?: Role }>(marks: readonly M[], about: string): readonly M[] {
  const role: Role = { tag: 'Figure', about };
  return marks.map((mark) => (mark.role === undefined ? { ...mark, role } : mark));
}
