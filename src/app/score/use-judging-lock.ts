import { useEffect } from 'react';
import { scoreCardKey } from '../../storage/score-cards.ts';
import { acquireLock } from '../../storage/tab-lock.ts';
import type { CardStore } from './card-store.ts';

/** How soon after a refusal the lock is asked for again, milliseconds: at first a page that is just leaving may still hold it. */
const [FIRST_RETRY, RETRY] = [250, 2000];

/** One tab judges a card; another shows what that one writes, and goes on where it leaves. */
export function useJudgingLock(of: string, store: CardStore): void {
  useEffect(() => {
    let isOver = false;
    let release = () => {};
    let timer = 0;
    const ask = async (retry: number) => {
      const got = await acquireLock(`score-${of}`);
      if (isOver) {
        if (got.kind === 'acquired') got.release();
        return;
      }
      const isElsewhere = got.kind === 'in-other-tab';
      if (isElsewhere !== store.state().isElsewhere) store.setElsewhere(isElsewhere);
      if (got.kind === 'acquired') release = got.release;
      if (isElsewhere) timer = window.setTimeout(() => void ask(RETRY), retry);
    };
    const follow = ({ key }: StorageEvent) => {
      if (key === scoreCardKey(of)) store.follow();
    };
    void ask(FIRST_RETRY);
    window.addEventListener('storage', follow);
    return () => {
      isOver = true;
      window.clearTimeout(timer);
      window.removeEventListener('storage', follow);
      release();
    };
  }, [of, store]);
}
