import { printDuration } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import { useDeskState } from '../desk-context.tsx';

/** How long one go takes, and the class. */
export function ClockPanel() {
  const { course, line } = useDeskState((state) => state.survey);
  const entries = course.class.entries;
  return (
    <dl className="facts">
      <div>
        <dt>One go</dt>
        <dd>
          <strong>{printDuration(line.clock.go)}</strong>
        </dd>
      </div>
      <div>
        <dt>Line of travel</dt>
        <dd>{printLength(line.length, course.unit)}</dd>
      </div>
      {entries > 0 && (
        <div>
          <dt>{entries} entries, riding only</dt>
          <dd>{printDuration(line.clock.go * entries)}</dd>
        </div>
      )}
    </dl>
  );
}
