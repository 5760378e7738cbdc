import { SHORTCUTS } from '../../desk/keyboard/shortcuts.ts';
import { helpWords } from '../../words/help.ts';
import { STAGES } from '../app-words.ts';

/** The stages and the keys. */
export function Help() {
  return (
    <div className="help">
      <section aria-labelledby="help-stages">
        <h3 id="help-stages">{helpWords.theFiveStages}</h3>
        <dl>
          {STAGES.map(({ id, title }) => (
            <div key={id}>
              <dt>{title}</dt>
              <dd>{helpWords.stages[id]}</dd>
            </div>
          ))}
        </dl>
      </section>
      {helpWords.sections.map(({ id, title, paragraphs }) => (
        <section key={id} aria-labelledby={id}>
          <h3 id={id}>{title}</h3>
          {paragraphs.map((paragraph) => (
            <p key={paragraph}>{paragraph}</p>
          ))}
        </section>
      ))}
      <section aria-labelledby="help-keys">
        <h3 id="help-keys">{helpWords.keysInArena}</h3>
        <table>
          <thead>
            <tr>
              <th scope="col">{helpWords.key}</th>
              <th scope="col">{helpWords.whatItDoes}</th>
            </tr>
          </thead>
          <tbody>
            {[...SHORTCUTS.map(({ shown, says }) => [shown, says] as const), ...helpWords.keys].map(([shown, says]) => (
              <tr key={shown}>
                <th scope="row">
                  <kbd>{shown}</kbd>
                </th>
                <td>{says}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section aria-labelledby="help-care">
        <h3 id="help-care">{helpWords.withCare}</h3>
        <p>{helpWords.care}</p>
        <p>
          <strong>{helpWords.whoDecides}</strong>
        </p>
        <p>{helpWords.whereCourseIs}</p>
      </section>
    </div>
  );
}
