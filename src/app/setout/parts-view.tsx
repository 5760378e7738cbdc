import { useState, useSyncExternalStore } from 'react';
import { setoutWords } from '../../words/setout.ts';
import type { ActPlace } from './acts.ts';
import { partActs } from './acts.ts';
import { companionFragment } from './companion-door.ts';
import type { CompanionProps } from './companion-props.ts';
import { doneOf } from './notes.ts';

/** All parts in walking order: to go to one, to see what is done, and to share some of them with somebody else. */
export function PartsView({
  survey,
  plan,
  parts,
  notes,
  link,
  here,
  show,
  goTo,
}: CompanionProps & { readonly here: ActPlace; goTo(act: string): void }) {
  const noted = useSyncExternalStore(notes.subscribe, notes.state);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [isClearing, setClearing] = useState(false);
  const isAllDone = parts.every((part) => doneOf(part, noted) === part.acts.length);
  const isShared = parts.length < plan.parts.length;
  const isUnknown =
    link.obstacles.length > 0 &&
    !isShared &&
    partActs(survey, plan).every(({ part }) => !part.obstacles.some((id) => link.obstacles.includes(id)));
  const choose = (id: string) =>
    setChosen(chosen.includes(id) ? chosen.filter((each) => each !== id) : [...chosen, id]);
  return (
    <div className="setout-page">
      <h3>{setoutWords.partsInOrder}</h3>
      {here.after === undefined && <p role="status">{isAllDone ? setoutWords.allDone : setoutWords.theEnd}</p>}
      {!notes.isKept() && <p className="caution">{setoutWords.notKept}</p>}
      {isUnknown && <p className="caution">{setoutWords.noSuchParts}</p>}
      {isShared && (
        <>
          <p>{setoutWords.isShared(parts.map(({ title }) => title).join(', '))}</p>
          <button type="button" className="button" onClick={() => show([])}>
            {setoutWords.showAllParts}
          </button>
        </>
      )}
      <ol className="setout-parts">
        {parts.map((part, index) => {
          const [obstacle] = part.part.obstacles;
          const first = part.acts.find(({ id }) => !noted.parts[part.print]?.ticks.includes(id)) ?? part.acts[0];
          return (
            <li key={part.print}>
              <label className="setout-choose">
                <input
                  type="checkbox"
                  checked={chosen.includes(obstacle)}
                  aria-label={setoutWords.sharePart(part.title)}
                  onChange={() => choose(obstacle)}
                />
              </label>
              <button
                type="button"
                aria-current={index === here.part ? 'step' : undefined}
                onClick={() => first !== undefined && goTo(first.id)}
              >
                <span className="setout-part-title">
                  {index + 1}. {part.title}
                </span>
                <span>
                  {setoutWords.steps(part.steps.length)} · {setoutWords.doneOf(doneOf(part, noted), part.acts.length)}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
      <Share fragment={chosen.length === 0 ? null : companionFragment({ ...link, obstacles: chosen })} />
      {isClearing ? (
        <div className="setout-clear">
          <p>{setoutWords.clearAsk}</p>
          <button
            type="button"
            className="button danger"
            onClick={() => {
              notes.clear();
              setClearing(false);
            }}
          >
            {setoutWords.clearSure}
          </button>
        </div>
      ) : (
        <button type="button" className="button" onClick={() => setClearing(true)}>
          {setoutWords.clearTicks}
        </button>
      )}
    </div>
  );
}

/** The link of the chosen parts: by the device's own way to share, else copied, and in any case to be seen. */
function Share({ fragment }: { readonly fragment: string | null }) {
  const [said, setSaid] = useState<string | null>(null);
  const [shown, setShown] = useState<string | null>(null);
  const share = async () => {
    if (fragment === null) {
      setSaid(setoutWords.nothingChosenToShare);
      return;
    }
    const url = new URL(fragment, location.href).href;
    setShown(url);
    setSaid(null);
    try {
      if (navigator.share !== undefined) await navigator.share({ title: setoutWords.companion, url });
      else {
        await navigator.clipboard.writeText(url);
        setSaid(setoutWords.linkCopied);
      }
    } catch {
      // It was put off, or the browser forbids it: the link stands in its field.
    }
  };
  return (
    <section className="setout-share" aria-label={setoutWords.share}>
      <p>{setoutWords.chooseToShare}</p>
      <button type="button" className="button primary" onClick={() => void share()}>
        {setoutWords.share}
      </button>
      <p role="status">{said}</p>
      {shown !== null && (
        <label className="field wide">
          <span>{setoutWords.linkIs}</span>
          <input type="text" readOnly value={shown} onFocus={(event) => event.target.select()} />
        </label>
      )}
      <p className="small">{setoutWords.shareHow}</p>
    </section>
  );
}
