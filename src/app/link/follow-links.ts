import { presentCourse } from '../../core/course/history.ts';
import type { Desk } from '../../desk/desk.ts';
import type { CourseSaver } from '../autosave.ts';
import { isCourseLink, type Linked, putLinked, readAddress } from './linked.ts';

/**
 * Keeps the page and its address in step. A link that comes later is opened beside what is open, and going back brings that
 * back. The address loses the course as soon as that is changed: a reload then goes on with the work and not with the link.
 */
export function followLinks(desk: Desk, saver: CourseSaver, opened: Linked): void {
  let linked = opened.kind === 'opened' ? opened.course : undefined;
  /** The fragment whose course was opened last. Other parts of the page have fragments of their own, and come back to this one. */
  let shown = linked === undefined ? '' : location.hash;
  /** What was open before the link. */
  let before: string | undefined;

  function forgetAddress(): void {
    linked = undefined;
    if (!isCourseLink(location.hash)) return;
    history.replaceState(history.state, '', location.pathname + location.search);
    shown = '';
  }
  function onDeskChange(): void {
    if (linked !== undefined && presentCourse(desk.state().history) !== linked) forgetAddress();
  }
  async function onAddress(): Promise<void> {
    if (location.hash === shown) {
      // Back from another part of the page: what was changed meanwhile stays.
      if (linked === undefined) forgetAddress();
      return;
    }
    if (!isCourseLink(location.hash)) {
      if (location.hash !== '') return;
      const isUntouched = linked !== undefined;
      linked = undefined;
      shown = '';
      putLinked({ kind: 'none' });
      if (isUntouched && before !== undefined) await saver.load(before);
      return;
    }
    const read = await readAddress();
    if (read.kind === 'opened') {
      if (linked === undefined) before = saver.slot();
      linked = undefined;
      saver.lookAt(read.course);
      desk.switchStage('ride');
      linked = read.course;
      shown = location.hash;
    }
    putLinked(read);
  }

  onDeskChange();
  desk.subscribe(onDeskChange);
  window.addEventListener('hashchange', () => void onAddress());
}
