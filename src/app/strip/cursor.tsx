import { useEffect, useRef } from 'react';
import { ridePositionAt } from '../../core/ride/playing.ts';
import { useDeskState } from '../desk-context.tsx';
import { usePlayer } from '../ride/player-context.tsx';
import { STRIP_EDGE } from './strip-edge.ts';

/** Where the horse is on the strip; moved outside React, so that nothing is rendered while it plays. */
export function Cursor({ scale }: { readonly scale: number }) {
  const player = usePlayer();
  const line = useDeskState((state) => state.survey.line);
  const mark = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const seen = (time: number) => {
      const element = mark.current;
      if (element === null) return;
      const at = ridePositionAt(line, time)?.at ?? 0;
      const x = STRIP_EDGE + at * scale;
      element.style.transform = `translateX(${x}px)`;
      element.hidden = time === 0;
      const box = element.closest('.strip-scroller');
      if (!player.state().isPlaying || box === null) return;
      if (x < box.scrollLeft + 20 || x > box.scrollLeft + box.clientWidth - 40) box.scrollLeft = Math.max(0, x - 80);
    };
    seen(player.time());
    return player.watch(seen);
  }, [player, scale, line]);
  return <div ref={mark} className="ride-cursor" hidden />;
}
