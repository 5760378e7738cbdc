import type { PlacedPiece } from '../../core/course/placed.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import { paramText } from '../../core/pieces/param-words.ts';
import { setWords } from '../../words/set.ts';
import { terms } from '../../words/terms.ts';
import { pieceTitle } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { TypedField } from './typed-field.tsx';

/** The exact numbers of one piece, and whether it stays where it is. */
export function PieceInspector({ piece }: { readonly piece: PlacedPiece }) {
  const desk = useDesk();
  const unit = useDeskState((state) => state.course.unit);
  const { key, pose, kind } = piece;
  const isFixed = piece.piece.fixed === true;
  const sizes = Object.entries(kind.params).filter(([, param]) => param.kind !== 'choice');
  return (
    <div className="inspector">
      <p className="inspector-title">
        {pieceTitle(piece)}{' '}
        <button type="button" className="link" onClick={() => desk.choose([piece.obstacle])}>
          {setWords.wholeObstacle}
        </button>
      </p>
      <div className="fields">
        <TypedField
          label={terms.fromWest}
          value={printLength(pose.x, unit)}
          send={(text) => desk.setPose(key, 'x', text)}
        />
        <TypedField
          label={terms.fromSouth}
          value={printLength(pose.y, unit)}
          send={(text) => desk.setPose(key, 'y', text)}
        />
        <TypedField
          label={terms.heading}
          value={printAngle(pose.angle)}
          send={(text) => desk.setPose(key, 'angle', text)}
        />
      </div>
      <label className="tick">
        <input type="checkbox" checked={isFixed} onChange={() => desk.togglePinned()} />
        {setWords.fixedStaysWhereWhile}
      </label>
      <h3>{setWords.itsSize}</h3>
      <dl className="facts">
        {sizes.map(([param, about]) => (
          <div key={param}>
            <dt>{about.label}</dt>
            <dd>{paramText(about, piece.piece.values[param] ?? about.usual, unit)}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
