import { emptyWords } from '../../words/first-visit.ts';
import { terms } from '../../words/terms.ts';
import { obstacleTitle } from '../app-words.ts';
import { openFindings } from '../check/visible-findings.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { useView } from '../view.ts';

/** All obstacles of the layout; choosing one here chooses it in the arena. */
export function ObstacleListPanel() {
  const desk = useDesk();
  const view = useView();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const findings = useDeskState(openFindings);
  if (survey.obstacles.length === 0) return <p className="empty">{emptyWords.panel}</p>;
  const first = (id: string) => survey.numbers.get(id)?.[0] ?? Number.POSITIVE_INFINITY;
  const inOrder = [...survey.obstacles].sort((a, b) => first(a.obstacle.id) - first(b.obstacle.id));
  return (
    <ul className="rows">
      {inOrder.map(({ obstacle }) => {
        const numbers = survey.numbers.get(obstacle.id)?.join(', ') ?? '–';
        const isChosen = chosen.some((key) => key === obstacle.id || key.startsWith(`${obstacle.id}/`));
        const heavy = findings.filter(
          (finding) => finding.weight !== 'note' && finding.keys.some((key) => key.split('/')[0] === obstacle.id),
        );
        return (
          <li key={obstacle.id}>
            <button
              type="button"
              className="row"
              aria-pressed={isChosen}
              onClick={() => desk.choose([obstacle.id])}
              onDoubleClick={() => view.show(obstacle.pose)}
            >
              <span className="number">{numbers}</span>
              <span className="row-title">{obstacleTitle(obstacle, survey.layout)}</span>
              {heavy.length > 0 && (
                <span className={`dot ${heavy.some((each) => each.weight === 'must') ? 'must' : 'should'}`}>
                  <span aria-hidden="true">{heavy.length}</span>
                  <span className="visually-hidden">{terms.findings(heavy.length)}</span>
                </span>
              )}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
