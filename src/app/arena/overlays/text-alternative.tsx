import { description, reading } from '../../../desk/description.ts';
import { goOrder } from '../../../desk/selection/selection.ts';
import { byEarWords } from '../../../words/by-ear.ts';
import { comparedLayouts, useComparedState } from '../../change/compared.ts';
import { ORIGINS_PART } from '../../change/later-origins.ts';
import { subjectOf } from '../../check/finding-subject.ts';
import { openFindings } from '../../check/visible-findings.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useLaterPart } from '../../use-later-part.ts';

/**
 * The arena in words, for a screen reader: what is chosen is said with the arena, everything else stands in a list that is
 * read when somebody wants it.
 */
export function TextAlternative() {
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const findings = useDeskState(openFindings);
  const isChecked = useDeskState((state) => state.isChecked);
  const isChange = useDeskState((state) => state.stage === 'change');
  const compared = useComparedState((state) => state);
  const origins = useLaterPart(ORIGINS_PART);
  const others = isChange ? comparedLayouts(survey.course, compared) : [];
  const { unit } = survey.course;
  return (
    <div className="visually-hidden">
      <p id="arena-summary">
        {description({ survey, chosen, findings: isChecked ? findings : null })}
        {others.length > 0 &&
          ` ${byEarWords.compared(
            survey.layout.title,
            others.map(({ title }) => title),
          )}`}
      </p>
      <p id="arena-keys">{byEarWords.keys}</p>
      <ul aria-label={byEarWords.contents}>
        {goOrder(survey.course).map((id) => {
          const obstacle = survey.layout.obstacles.find((each) => each.id === id);
          if (obstacle === undefined) return null;
          const isChosen = chosen.some((key) => key === id || key.startsWith(`${id}/`));
          const gravest = findings.find((finding) => subjectOf(finding) === id)?.at;
          return (
            <li
              key={id}
              data-obstacle={id}
              data-x={obstacle.pose.x}
              data-y={obstacle.pose.y}
              data-angle={obstacle.pose.angle}
              data-badge={gravest === undefined ? undefined : `${gravest.x} ${gravest.y}`}
            >
              {isChosen && byEarWords.isChosen}
              {reading({ survey, findings }, id)}
              {others.length > 0 &&
                origins !== undefined &&
                ` ${origins.originsWords(id, { shown: survey.layout, others, unit })}`}
            </li>
          );
        })}
      </ul>
    </div>
  );
}
