import { SHORTCUTS } from '../../desk/keyboard/shortcuts.ts';

const STAGE_HELP: readonly (readonly [string, string])[] = [
  [
    'Set',
    'Put obstacles into the arena. Drag them, turn them, or type their exact numbers on the tape. Things snap to walls, centre lines and neighbours; hold Alt to move freely.',
  ],
  [
    'Ride',
    'Say in which order and at which gait it is ridden. The line of travel, the landings and the time follow; a tick across the line is where the gait or the lead changes. Drag the line to bend it, choose on which side it passes a thing, or drag a handle to move where it crosses a pole. Play it, or step from landing to landing; Prints shows the hooves, Time what each obstacle costs the class.',
  ],
  [
    'Check',
    'Read what does not fit, go to it, and mend it with one click where there is a fix, or waive it with your reason. Hold the course against a second rule book, see the ground that a backing horse sweeps, and watch it going through.',
  ],
  [
    'Post',
    'See the pattern as it will hang on the board, put it into your own words, and export it as a PDF; the designer’s copy adds findings and waivers.',
  ],
  [
    'Change',
    'Keep several layouts in one course: branch one and change the branch. Compare lays one over the other or side by side, and marks the better measures. Change-over says what the crew carries where, in which order and in about how many minutes. Day gives the classes their times and finds the order that needs the least changing over.',
  ],
];

const VIEW_KEYS: readonly (readonly [string, string])[] = [
  ['+ and −', 'Zoom in and out; so do the wheel and two fingers'],
  ['0', 'Show the whole arena'],
  ['G', 'Go to the numbers on the tapes of what is chosen; Enter types, Escape comes back'],
  ['Space, held', 'Drag to move the picture; so do the middle button and two fingers'],
  ['Alt, held', 'Snap to nothing'],
  ['Ctrl + S', 'Save the course as a file'],
  ['Ctrl + O', 'Open a file'],
];

/** The stages and the keys. */
export function Help() {
  return (
    <div className="help">
      <section aria-labelledby="help-stages">
        <h3 id="help-stages">The five stages</h3>
        <dl>
          {STAGE_HELP.map(([name, says]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{says}</dd>
            </div>
          ))}
        </dl>
      </section>
      <section aria-labelledby="help-numbers">
        <h3 id="help-numbers">Typing numbers</h3>
        <p>
          Write lengths as you say them: <code>6' 3 1/2"</code>, <code>6ft 3in</code>, <code>75 1/2 in</code>,{' '}
          <code>1.9 m</code>, <code>190 cm</code>. A bare number is read in the unit of the course. Gaps are always
          measured inside to inside, on the line of travel.
        </p>
      </section>
      <section aria-labelledby="help-kept">
        <h3 id="help-kept">What is kept</h3>
        <p>
          A chosen obstacle shows its tapes: the measures that it keeps while you drag a pole of it. Press a number to
          type another; the pole that the horse comes to first stays, a fixed one always does. A number that all the
          tapes share is the number in the Tape panel; one of its own is an exception, told under the field. The panel
          lists all that is kept, lets you drop it or only measure it, and offers more to keep as it is now. When two
          things cannot both be kept, nothing moves until you drop one of them.
        </p>
        <p>
          After a snap you may keep what it found; leave the offer alone and nothing is kept. <strong>Measure</strong>{' '}
          lays a tape between any two things or places, near face to near face.
        </p>
      </section>
      <section aria-labelledby="help-ways">
        <h3 id="help-ways">Which way round</h3>
        <p>
          An obstacle that you add is ridden the way that is best for the whole ride: from which end, over which pole
          first, on which hand. The ways of all such obstacles are taken together, and anew after each change. Choose
          one at <em>Ride → Which way</em> and it stays. Where the whole ride would be shorter another way, a note at
          Check says by how much, and one click rides it so; the work, the gaits and the chosen leads stay what they
          are.
        </p>
      </section>
      <section aria-labelledby="help-keys">
        <h3 id="help-keys">Keys in the arena</h3>
        <table>
          <thead>
            <tr>
              <th scope="col">Key</th>
              <th scope="col">What it does</th>
            </tr>
          </thead>
          <tbody>
            {[...SHORTCUTS.map(({ shown, says }) => [shown, says] as const), ...VIEW_KEYS].map(([shown, says]) => (
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
        <h3 id="help-care">With care</h3>
        <p>
          The numbers here are measures, not promises. Strides differ from horse to horse and from ground to ground:
          walk the course, tape every gap, and ride it with a quiet horse before the class.
        </p>
        <p>
          <strong>The rule book in force, the show’s officials and the judge decide.</strong>
        </p>
        <p>
          Your course is kept in this browser only, with its last hundred steps to undo and redo. Save a file of it to
          keep it safe or to pass it on.
        </p>
      </section>
    </div>
  );
}
