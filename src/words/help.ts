/** The help pages. */
export const helpWords = {
  theFiveStages: 'The five stages',
  stages: {
    set: 'Put obstacles into the arena: type under Add to find one (fan, slalom, chute), and Enter adds it. Drag them, turn them, or type their exact numbers. Things snap to walls, centre lines and neighbours; Snap switches that off, and Alt while you drag does the opposite. The grid shows while something moves or you measure. Start and end can be dragged at every stage.',
    ride: 'Say in which order and at which gait the obstacles are ridden. The line of travel, the landings and the time follow; a tick across the line is where the gait or the lead changes. Drag the line to bend it, choose on which side it passes a thing, or drag a handle to move where it crosses a pole. Play it, or step from landing to landing. Hoof prints shows where the feet come down, Time what each obstacle costs the class.',
    check:
      'Read what is out of range, go to it, and apply a fix with one click where there is one, or waive it with your reason. A badge in the arena opens its finding when it is pressed; a drag that begins on it moves what lies beneath. Compare two rule books, see the ground that a backing horse sweeps, and watch it going through.',
    post: 'See each sheet as it will be posted: Page Down and a swipe turn the pages, + and − and two fingers zoom. Change the words of the pattern; an instruction that you wrote is marked when the course has changed since. Export PDF stands under the pages, with other kinds of file, all sheets as one, print and a link in the menu beside it. A folder binds the sheets of the class, or of every class of the day. Entries has who rides when, Set-out gives the crew its tapes and opens the steps for the arena, Score opens the judge’s card for a tablet.',
    change:
      'Keep several layouts in one course: branch one and change the branch. Compare lays one over the other or side by side, and marks the better measures. Change-over says what the crew carries where, in which order and in about how many minutes. Day gives the classes their times and finds the order that needs the least changing over.',
  },
  sections: [
    {
      id: 'help-numbers',
      title: 'Typing numbers',
      paragraphs: [
        'Write lengths as you say them: 6\' 3 1/2", 6ft 3in, 75 1/2 in, 1.9 m, 190 cm. A bare number is read in the unit of the course. Gaps are always measured inside to inside, on the line of travel.',
      ],
    },
    {
      id: 'help-kept',
      title: 'What is kept',
      paragraphs: [
        'A chosen obstacle shows its tapes: the measures that it keeps while you drag one of its poles. Press a number to type another; the pole that the horse comes to first stays, and a pinned one always does. A number that all the tapes share is the number in the Tape panel; one that differs is an exception, named under the field. The panel lists all that is kept, lets you drop it or only measure it, and offers more to keep as it is now. When two things cannot both be kept, nothing moves until you drop one of them.',
        'After a snap you may keep what it found; leave the offer alone and nothing is kept. Measure lays a tape between any two things or places, near face to near face.',
      ],
    },
    {
      id: 'help-touch',
      title: 'By touch',
      paragraphs: [
        'Tap a thing to choose it, then drag it; a round enlargement shows what is under the finger. Anywhere else one finger moves the picture, and two zoom. Press and hold a thing for its menu. Press and hold an obstacle in the list, then drag it to its place; a tap adds it to free ground. The nudge pad moves and turns what is chosen by exact steps.',
      ],
    },
    {
      id: 'help-ways',
      title: 'Which way an obstacle is ridden',
      paragraphs: [
        'An obstacle that you add is ridden the way that is best for the whole ride: from which end, over which pole first, on which hand. The ways of all such obstacles are taken together, and anew after each change. Choose one at Ride → Which way and it stays. Where another way would make the whole ride shorter, a note at Check says by how much, and one click takes it; the work, the gaits and the chosen leads stay as they are.',
      ],
    },
    {
      id: 'help-link',
      title: 'A link and a code',
      paragraphs: [
        'File → Copy a link… makes an address that holds the shown layout with its arena and its class. Whoever opens it sees the ride play, and nothing is sent to anybody: the course is in the address. What they change is theirs. Where Polewright is served from an address that others can reach, the pattern has the link as a code for a phone.',
      ],
    },
    {
      id: 'help-entries',
      title: 'Who rides, and when',
      paragraphs: [
        'Post → Entries takes the entries as you type or paste them, one a line: number, rider, horse. Columns of a spreadsheet come as they are. A line that cannot be read stays in the box, with what would be right. Draw the order, or put it by number; a draw number draws the same order again. Move an entry by its arrows, by Alt + Up and Alt + Down, or by dragging it.',
        'Press an entry to scratch it, or to type how many minutes late it goes: all after it move with it. The times are estimates; the sheets Order of go and Gate sheet show them.',
      ],
    },
    {
      id: 'help-pages',
      title: 'Pages and files at Post',
      paragraphs: [
        'The page stands as it will print. A swipe, Page Down and Page Up turn it; two fingers, two taps, Ctrl and the wheel, + and − zoom, and 0 shows all of it. Export PDF stands under the pages; the arrow beside it opens the other kinds of file, all sheets as one, print, and the link. Long exports tell how far they are and can be cancelled; the course can be changed meanwhile.',
        'An instruction in your own words is marked when the course no longer says what it said when you wrote it. Keep yours, take the new words, or edit.',
      ],
    },
    {
      id: 'help-set-out',
      title: 'Setting it out in the arena',
      paragraphs: [
        'Post → Set-out → Set it out in the arena shows one thing to do at a time, large enough for arm’s length. Held is solid, laid now is hatched, and ends have letters; turn the picture to face as you do. Next and Back are a third of the screen; Page Down and Page Up do the same. Once the page is loaded it needs no connection.',
        'Tick what is done: it is remembered on this device until the part’s plan changes. Under Parts, tick the parts that somebody else lays and share their link; it needs the same course on the other device. Under As built, type what the tape reads: it says which reading is likely wrong, and what to move so that every gap is in its band.',
      ],
    },
    {
      id: 'help-score',
      title: 'Scoring on a tablet',
      paragraphs: [
        'Post → Score → Open the score card: choose the entry, tap a score and any penalties, and go on with Next. A score that is tapped again is taken back; Undo takes back anything. Placings shows totals and ties so far, and exports them. Each tap is kept in this browser. It is an aid to the scribe, not the official result.',
      ],
    },
  ],
  keysInArena: 'Keys in the arena',
  key: 'Key',
  whatItDoes: 'What it does',
  keys: [
    ['+ and −', 'Zoom in and out; so do the wheel and two fingers'],
    ['0', 'Show the whole arena'],
    ['G', 'Go to the numbers on the tapes of what is chosen; Enter types, Escape comes back'],
    ['Space, held', 'Drag to move the picture; so do the middle button and two fingers'],
    ['Alt, held', 'The opposite of the Snap switch'],
    ['Page Up, Page Down', 'At Post: the page before, and the next; Home and End: the first, and the last'],
    ['F6', 'Go to the next part of the page; with Shift to the one before'],
    ['. and ,', 'Go to the next finding, and to the one before'],
    ['I', 'Open the finding that is pointed at, or the first of what is chosen'],
    ['Shift + F10', 'Open the menu of what is chosen'],
    ['Ctrl + S', 'Save the course as a file'],
    ['Ctrl + O', 'Open a file'],
  ],
  withCare: 'With care',
  care: 'The numbers here are measures, not promises. Strides differ from horse to horse and from ground to ground: walk the course, tape every gap, and ride it with a quiet horse before the class.',
  whoDecides: 'The rule book in force, the show’s officials and the judge decide.',
  whereCourseIs:
    'Your course stays in this browser only, where two hundred steps can be undone, a hundred of them after a reload. The three hints of the first visit are under File → Show the hints again. Save it as a file to have it safe or to pass it on.',
} as const;
