import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import { useFollowingDesk } from '../desk-context.tsx';
import { createPlayer, type Player, type PlayerState } from './player.ts';
import { timelineOf } from './timeline.ts';

const PlayerContext = createContext<Player | null>(null);

/** One player for the arena, the strip and the buttons; it always plays the course on the desk. */
export function PlayerProvider({ children }: { readonly children: ReactNode }) {
  const desk = useFollowingDesk();
  const [player] = useState(() => createPlayer({ next: (frame) => requestAnimationFrame(frame) }));
  useEffect(() => {
    let stage = desk.state().stage;
    const load = () => {
      const now = desk.state();
      if (now.stage !== 'ride' && stage === 'ride') player.pause();
      stage = now.stage;
      if (stage === 'ride') player.load(timelineOf(now.survey.line));
    };
    load();
    return desk.subscribe(load);
  }, [desk, player]);
  return <PlayerContext value={player}>{children}</PlayerContext>;
}

export function usePlayer(): Player {
  const player = useContext(PlayerContext);
  if (player === null) throw new Error('usePlayer: there is no PlayerProvider above');
  return player;
}

export function usePlayerState<Part>(pick: (state: PlayerState) => Part): Part {
  const player = usePlayer();
  return useSyncExternalStore(player.subscribe, () => pick(player.state()));
}
