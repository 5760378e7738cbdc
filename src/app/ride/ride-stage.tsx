import { ArenaView } from '../arena/arena-view.tsx';
import { PlayBar } from './play-bar.tsx';

/** The arena at the Ride stage, with what plays the go below it. */
export function RideStage() {
  return (
    <div className="ride-stage">
      <div className="ride-arena">
        <ArenaView />
      </div>
      <PlayBar />
    </div>
  );
}
