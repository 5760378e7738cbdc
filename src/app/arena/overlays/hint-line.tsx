import type { DeskState } from '../../../desk/desk.ts';
import { messages } from '../../../words/desk.ts';
import { useOriginSentence } from '../../change/use-origin-sentence.ts';
import { visibleFindings } from '../../check/visible-findings.ts';
import { useDeskState, useLiveDeskState } from '../../desk-context.tsx';
import { laterPart } from '../../later-part.ts';
import { useLaterPart } from '../../use-later-part.ts';
import { useViewState } from '../../view.ts';
import { FOLDED } from '../camera.ts';

/** The gesture and its snaps; null at rest. One text, so that a move that changes nothing of it renders nothing. */
function gestureWords({ gesture, guides }: DeskState): string | null {
  return gesture === null ? null : [gesture, ...guides.map((guide) => guide.says)].join(' · ');
}

/** What a gap is and what the rule book asks of it. */
const TRACK_PART = laterPart(() => import('../../strip/track.ts'));

/** One line over the arena: the gesture and its snaps, or what is pointed at. */
export function HintLine() {
  const doing = useLiveDeskState(gestureWords);
  const survey = useDeskState((state) => state.survey);
  const findings = useDeskState(visibleFindings);
  const pointed = useViewState((state) => state.pointed);
  const measuring = useDeskState((state) => state.tape);
  const measured = useDeskState((state) => state.tapeReading);
  const sentence = useOriginSentence();
  // The arrow has the distance; on a small picture the line would lie over it.
  const origin = useViewState((state) => state.size.width < FOLDED) ? '' : sentence;
  const finding = pointed?.kind === 'finding' ? findings.find((each) => each.id === pointed.id) : undefined;
  const track = useLaterPart(TRACK_PART);
  const gap = pointed?.kind === 'gap' ? track?.stripGaps(survey)[pointed.gap] : undefined;
  const says =
    measuring !== null
      ? (measured?.says ?? (measuring.from === null ? messages.tapeInHand() : messages.pressOtherEnd()))
      : doing !== null
        ? doing
        : (finding?.says ??
          (track === undefined || gap === undefined ? origin : track.gapSentence(gap, survey.course.unit)));
  if (says === '') return null;
  return (
    <p className={`hint-line ${doing === null ? (finding?.weight ?? '') : ''}`} aria-hidden="true">
      {says}
    </p>
  );
}
