import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import { obstacleKind } from '../../core/obstacles/obstacles.ts';
import { paramText } from '../../core/pieces/param-words.ts';
import { completeValues } from '../../core/pieces/params.ts';
import { exceptionsInWords } from '../../desk/change-words.ts';
import { setWords } from '../../words/set.ts';
import { terms } from '../../words/terms.ts';
import { obstacleTitle } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { Actions } from './actions.tsx';
import { ArenaInspector } from './arena-inspector.tsx';
import { ChoiceField } from './choice-field.tsx';
import { KeptList } from './kept-list.tsx';
import { OwnTools } from './own-tools.tsx';
import { PieceInspector } from './piece-inspector.tsx';
import { printedFact, spelled } from './printed.ts';
import { TypedField } from './typed-field.tsx';

/** The exact numbers of what is chosen. */
export function InspectorPanel() {
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const keys = chosen.filter((key) => survey.obstacles.some((each) => each.obstacle.id === key.split('/')[0]));
  const [key] = keys;
  if (key === undefined) return <ArenaInspector />;
  if (keys.length > 1) {
    return (
      <>
        <SeveralInspector keys={keys} />
        <Actions />
        <KeptList />
        <OwnTools />
      </>
    );
  }
  const piece = survey.pieces.find((each) => each.key === key);
  const owner = survey.obstacles.find((each) => each.obstacle.id === key.split('/')[0])?.obstacle;
  if (owner === undefined) return null;
  return (
    <>
      {piece === undefined ? (
        <ObstacleInspector key={key} obstacle={owner} />
      ) : (
        <PieceInspector key={key} piece={piece} />
      )}
      <Actions />
      <KeptList key={`kept ${key}`} />
      <OwnTools key={`own ${key}`} />
    </>
  );
}

/** Several things at once: obstacles go together, pieces can be fixed together. */
function SeveralInspector({ keys }: { readonly keys: readonly string[] }) {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const pieces = survey.pieces.filter((piece) => keys.includes(piece.key));
  if (pieces.length === 0) return <p className="lead">{setWords.severalChosen(terms.obstacles(keys.length))}</p>;
  return (
    <>
      <p className="lead">{setWords.piecesChosen(terms.pieces(keys.length))}</p>
      <label className="tick">
        <input
          type="checkbox"
          checked={pieces.every((each) => each.piece.fixed)}
          onChange={() => desk.togglePinned()}
        />
        {setWords.fixedTheyStayWhere}
      </label>
    </>
  );
}

function ObstacleInspector({ obstacle }: { readonly obstacle: Obstacle }) {
  const desk = useDesk();
  const unit = useDeskState((state) => state.course.unit);
  const layout = useDeskState((state) => state.survey.layout);
  const kind = obstacleKind(obstacle.kind);
  const { pose } = obstacle;
  const notes = exceptionsInWords(obstacle, unit);
  const rename = (text: string) => {
    const name = text.trim();
    desk.editLayout(setWords.nameObstacle(obstacleTitle(obstacle, layout)), (now) => ({
      ...now,
      obstacles: now.obstacles.map((each) => {
        if (each.id !== obstacle.id) return each;
        const { name: _, ...rest } = each;
        return name === '' ? rest : { ...rest, name };
      }),
    }));
    return undefined;
  };
  return (
    <div className="inspector">
      <TypedField wide label={terms.name} value={obstacleTitle(obstacle, layout)} send={rename} />
      {kind !== undefined && (
        <div className="fields">
          {Object.entries(kind.params).map(([param, about]) => {
            const value = obstacle.values[param] ?? about.usual;
            return about.kind === 'choice' ? (
              <ChoiceField
                key={param}
                label={about.label}
                value={String(value)}
                options={about.options}
                choose={(id) => desk.setValue(obstacle.id, param, id)}
              />
            ) : (
              <TypedField
                key={param}
                label={about.label}
                hint={about.says}
                note={notes[param]}
                value={paramText(about, value, unit)}
                send={(text) => desk.setValue(obstacle.id, param, text)}
              />
            );
          })}
        </div>
      )}
      <h3>{setWords.whereItLies}</h3>
      <div className="fields">
        <TypedField
          label={terms.fromWest}
          value={printLength(pose.x, unit)}
          send={(text) => desk.setPose(obstacle.id, 'x', text)}
        />
        <TypedField
          label={terms.fromSouth}
          value={printLength(pose.y, unit)}
          send={(text) => desk.setPose(obstacle.id, 'y', text)}
        />
        <TypedField
          label={terms.heading}
          value={printAngle(pose.angle)}
          send={(text) => desk.setPose(obstacle.id, 'angle', text)}
        />
      </div>
      <Gaps obstacle={obstacle} />
      <Facts obstacle={obstacle} />
    </div>
  );
}

/** The gaps as they lie now, and how often the horse comes down in each. */
function Gaps({ obstacle }: { readonly obstacle: Obstacle }) {
  const view = useView();
  const unit = useDeskState((state) => state.course.unit);
  const gaps = useDeskState((state) => state.survey.line.gaps);
  const own = gaps.flatMap((gap, index) => (gap.obstacle === obstacle.id ? [{ gap, index }] : []));
  if (own.length === 0) return null;
  return (
    <>
      <h3>{setWords.gapsInsideInside}</h3>
      <ul className="gap-rows">
        {own.map(({ gap, index }, place) => (
          <li
            key={`${gap.keys.join()} ${gap.leg}`}
            onPointerEnter={() => view.point({ kind: 'gap', gap: index })}
            onPointerLeave={() => view.point(null)}
          >
            <span className="gap-name">
              {place + 1}–{place + 2}
            </span>
            <strong>{printLength(gap.taped, unit)}</strong>
            <span className={gap.landings.fits ? 'gap-landings' : 'gap-landings is-off'}>
              {gap.landings.fits
                ? `${gap.landings.count} × ${printLength(gap.landings.each, unit)}`
                : setWords.noGaitFits(gap.gait)}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** What follows from the numbers: radii, angles. */
function Facts({ obstacle }: { readonly obstacle: Obstacle }) {
  const unit = useDeskState((state) => state.course.unit);
  const kind = obstacleKind(obstacle.kind);
  const facts = Object.entries(kind?.build(completeValues(kind.params, obstacle.values)).facts ?? {});
  if (facts.length === 0) return null;
  return (
    <>
      <h3>{setWords.workedOut}</h3>
      <dl className="facts">
        {facts.map(([key, value]) => (
          <div key={key}>
            <dt>{spelled(key)}</dt>
            <dd>{printedFact(key, value, unit)}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
