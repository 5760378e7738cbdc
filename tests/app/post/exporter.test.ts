import { expect, test } from 'vitest';
import { FIRST_COURSE } from '../../../src/app/file/first-course.ts';
import type { ExportedOrder, ExportOrder } from '../../../src/app/post/export-order.ts';
import type { ExportTold } from '../../../src/app/post/export-worker.ts';
import { createExporter } from '../../../src/app/post/exporter.ts';

const ORDER: ExportOrder = {
  course: FIRST_COURSE,
  format: 'pdf',
  sheets: [{ sheet: 'pattern', options: { paper: 'letter', orientation: 'fit' } }],
  dpi: 150,
};
const RESULT: ExportedOrder = {
  kind: 'exported',
  file: { name: 'a.pdf', type: 'application/pdf', bytes: new Uint8Array() },
  count: 1,
  pages: 1,
  scale: 200,
  notices: [],
};

/** An exporter whose workers say what they are told to. */
function bench() {
  const log: string[] = [];
  const tells: ((told: ExportTold) => void)[] = [];
  const exporter = createExporter((_, tell) => {
    log.push('start');
    tells.push(tell);
    return { end: () => log.push('end') };
  });
  return { exporter, log, tell: (told: ExportTold) => tells.at(-1)?.(told), tells };
}

test('it tells each step, then the file, and ends its worker', async () => {
  const { exporter, log, tell } = bench();
  const writing = exporter.write(ORDER);
  expect(exporter.state()).toMatchObject({ kind: 'busy', done: 0, of: 1 });
  tell({ step: { done: 2, of: 5 } });
  expect(exporter.state()).toMatchObject({ kind: 'busy', done: 2, of: 5 });
  tell({ result: RESULT });
  expect(await writing).toBe(RESULT);
  expect(exporter.state()).toMatchObject({ kind: 'done', result: RESULT });
  expect(log).toEqual(['start', 'end']);
  exporter.clear();
  expect(exporter.state()).toEqual({ kind: 'rest' });
});

test('one that is given up writes nothing, and what its worker still says is not heard', async () => {
  const { exporter, log, tells } = bench();
  const first = exporter.write(ORDER);
  exporter.giveUp();
  expect(await first).toBeUndefined();
  expect(exporter.state()).toEqual({ kind: 'given-up' });
  expect(log).toEqual(['start', 'end']);
  const second = exporter.write(ORDER);
  tells[0]?.({ result: RESULT });
  tells[0]?.({ step: { done: 4, of: 5 } });
  expect(exporter.state()).toMatchObject({ kind: 'busy', done: 0 });
  tells[1]?.({ failure: 'no paper' });
  expect(await second).toBeUndefined();
  expect(exporter.state()).toMatchObject({ kind: 'failed', why: 'no paper' });
});

test('while one is written another is not begun, and what is said of it stays', async () => {
  const { exporter, log } = bench();
  void exporter.write(ORDER);
  expect(await exporter.write(ORDER)).toBeUndefined();
  exporter.clear();
  expect(exporter.state().kind).toBe('busy');
  expect(log).toEqual(['start']);
});
