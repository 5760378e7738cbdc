import { ArrowDown, ArrowUp, Plus } from 'lucide-react';
import { type DragEvent, useState } from 'react';
import { addLeg, reorderLeg } from '../../core/course/edit-ride.ts';
import { rideWords } from '../../words/ride.ts';
import { GAIT_WORDS, obstacleTitle } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';

/** The order of the go: move a row with its buttons, or drag it. */
export function OrderPanel() {
  const desk = useDesk();
  const view = useView();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const pointed = useViewState((state) => state.pointed);
  const [dragged, setDragged] = useState<string | null>(null);
  const { legs } = survey.layout.ride;
  const titleOf = (id: string) => {
    const obstacle = survey.layout.obstacles.find((each) => each.id === id);
    return obstacle === undefined ? id : obstacleTitle(obstacle, survey.layout);
  };
  const put = (leg: string, to: number) =>
    desk.edit(rideWords.reorder, (course) => reorderLeg(course, leg, Math.max(0, Math.min(legs.length - 1, to))));
  const drop = (event: DragEvent, to: number) => {
    event.preventDefault();
    if (dragged !== null) put(dragged, to);
    setDragged(null);
  };
  return (
    <>
      {legs.length === 0 && <p className="empty">{rideWords.nothingRidden}</p>}
      <ol className="rows order">
        {legs.map((leg, index) => (
          <li
            key={leg.id}
            draggable
            className={`${dragged === leg.id ? 'is-dragged' : ''} ${pointed?.kind === 'leg' && pointed.leg === index ? 'is-pointed' : ''}`}
            onDragStart={() => setDragged(leg.id)}
            onDragEnd={() => setDragged(null)}
            onDragOver={(event) => event.preventDefault()}
            onDrop={(event) => drop(event, index)}
            onPointerEnter={() => view.point({ kind: 'leg', leg: index })}
            onPointerLeave={() => view.point(null)}
          >
            <button
              type="button"
              className="row"
              aria-pressed={chosen.includes(leg.obstacle)}
              onClick={() => desk.choose([leg.obstacle])}
            >
              <span className="number">{index + 1}</span>
              <span className="row-title">
                {titleOf(leg.obstacle)}
                <small className={`gait ${leg.gait}`}>{GAIT_WORDS[leg.gait]}</small>
              </span>
            </button>
            <button
              type="button"
              className="quiet"
              disabled={index === 0}
              aria-label={rideWords.rideEarlier(titleOf(leg.obstacle))}
              onClick={() => put(leg.id, index - 1)}
            >
              <ArrowUp aria-hidden="true" />
            </button>
            <button
              type="button"
              className="quiet"
              disabled={index === legs.length - 1}
              aria-label={rideWords.rideLater(titleOf(leg.obstacle))}
              onClick={() => put(leg.id, index + 1)}
            >
              <ArrowDown aria-hidden="true" />
            </button>
          </li>
        ))}
      </ol>
      <NotRidden />
    </>
  );
}

/** What stands in the arena and could be ridden, but is not part of the go. */
function NotRidden() {
  const desk = useDesk();
  const { layout } = useDeskState((state) => state.survey);
  const unridden = layout.obstacles.filter(
    (each) => each.passages.length > 0 && layout.ride.legs.every((leg) => leg.obstacle !== each.id),
  );
  if (unridden.length === 0) return null;
  return (
    <>
      <h3>{rideWords.notInOrder}</h3>
      <ul className="rows">
        {unridden.map((obstacle) => {
          const title = obstacleTitle(obstacle, layout);
          return (
            <li key={obstacle.id}>
              <button type="button" className="row" onClick={() => desk.choose([obstacle.id])}>
                <span className="row-title">{title}</span>
              </button>
              <button
                type="button"
                className="quiet"
                aria-label={rideWords.add(title)}
                title={rideWords.add(title)}
                onClick={() => desk.edit(rideWords.add(title), (course) => addLeg(course, obstacle.id))}
              >
                <Plus aria-hidden="true" />
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
