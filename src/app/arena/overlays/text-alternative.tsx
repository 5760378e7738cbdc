import { arenaSizeWords } from '../../../core/course/arena-size.ts';
import { printAngle } from '../../../core/measure/angle.ts';
import { andList } from '../../../core/text/sentence.ts';
import { terms } from '../../../words/terms.ts';
import { obstacleTitle, positionWords } from '../../app-words.ts';
import { comparedLayouts, useComparedState } from '../../change/compared.ts';
import { originsWords } from '../../change/origins.ts';
import { openFindings } from '../../check/visible-findings.ts';
import { useDeskState } from '../../desk-context.tsx';

/** The arena in words, for a screen reader. */
export function TextAlternative() {
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const findings = useDeskState(openFindings);
  const isChange = useDeskState((state) => state.stage === 'change');
  const compared = useComparedState((state) => state);
  const others = isChange ? comparedLayouts(survey.course, compared) : [];
  const { arena, unit } = survey.course;
  return (
    <div className="visually-hidden">
      <p id="arena-keys">
        Tab chooses the next obstacle, the arrow keys move what is chosen, Escape lets go. Help lists all keys.
      </p>
      <div id="arena-contents">
        <p>
          {arena.title}, {arenaSizeWords(arena, unit)}, {terms.obstacles(survey.obstacles.length)},{' '}
          {terms.findings(findings.length)}.
        </p>
        {others.length > 0 && (
          <p>
            {survey.layout.title} is compared with {andList(others.map(({ title }) => title))}.
          </p>
        )}
        <ul aria-label="What lies in the arena">
          {survey.obstacles.map(({ obstacle, pieces }) => {
            const numbers = survey.numbers.get(obstacle.id);
            const letters = pieces.flatMap(({ key }) => survey.letters.get(key) ?? []);
            const isChosen = chosen.some((key) => key === obstacle.id || key.startsWith(`${obstacle.id}/`));
            return (
              <li
                key={obstacle.id}
                data-obstacle={obstacle.id}
                data-x={obstacle.pose.x}
                data-y={obstacle.pose.y}
                data-angle={obstacle.pose.angle}
              >
                {numbers === undefined ? '' : `Number ${numbers.join(' and ')}: `}
                {obstacleTitle(obstacle, survey.layout)}, {terms.pieces(pieces.length)}
                {letters.length === 0 ? '' : `, markers ${andList(letters)}`}, {positionWords(obstacle.pose, unit)},
                turned {printAngle(obstacle.pose.angle)}
                {others.length > 0 && `, ${originsWords(obstacle.id, { shown: survey.layout, others, unit })}`}
                {isChosen ? ', chosen' : ''}
              </li>
            );
          })}
        </ul>
      </div>
    </div>
  );
}
