import type { Course, Stock } from '../../course/course.ts';
import { currentLayout } from '../../course/course.ts';
import { printLength } from '../../measure/length.ts';
import { pieceKind } from '../../pieces/pieces.ts';
import { polePiece } from '../../pieces/pole.ts';

/** A truck with what lies in the shown layout and no more: a link carries none. */
export function truckOfWhatLies(course: Course): readonly Stock[] {
  const lines: Stock[] = [];
  for (const { kind, values } of currentLayout(course).obstacles.flatMap(({ pieces }) => pieces)) {
    const length = kind === polePiece.id && typeof values.length === 'number' ? values.length : undefined;
    const at = lines.findIndex((line) => line.kind === kind && line.values.length === length);
    const line = lines[at];
    if (line !== undefined) {
      lines[at] = { ...line, count: line.count + 1 };
      continue;
    }
    const id = `line-${lines.length + 1}`;
    const title = pieceKind(kind)?.title ?? kind;
    lines.push(
      length === undefined
        ? { id, title, kind, values: {}, count: 1 }
        : { id, title: `${title}, ${printLength(length, course.unit)}`, kind, values: { length }, count: 1 },
    );
  }
  return lines;
}
