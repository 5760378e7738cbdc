/** What the keys do, as the help lists it. */
export const keyWords = {
  // Shortcuts.
  chooseNextObstacleOrder: 'Choose the next obstacle in the order of obstacles; after the last, leave the arena',
  chooseOneBefore: 'Choose the one before',
  addNextObstacleWhat: 'Add the next obstacle to what is chosen; while a piece is chosen, the next piece',
  putNextPiecePlace: 'Put the next piece in the place of the one added last',
  chooseEveryObstacle: 'Choose every obstacle',
  goIntoPiecesChosen: 'Go into the pieces of the chosen obstacle',
  letGoWhatUnder: 'Let go of what is under way, then of the tape, of the piece, of the obstacle',
  arrows: 'Arrows',
  moveWhatChosenBy: 'Move what is chosen by 1 in (1 cm in a metric course)',
  moveWhatChosenBy1: 'Move what is chosen by 1 ft (10 cm in a metric course)',
  turnBy15Left: 'Turn by 15° to the left',
  turnBy15Right: 'Turn by 15° to the right',
  turnBy1Left: 'Turn by 1° to the left',
  turnBy1Right: 'Turn by 1° to the right',
  mirror: 'Mirror',
  duplicate: 'Duplicate to the nearest free ground',
  delete: 'Delete what is chosen',
  pin: 'Pin what is chosen where it is, or free it',
  takeTapeMeasureBetween: 'Take the tape: measure between two things, at once when two are chosen; again puts it away',
  keepWhatJustOffered: 'Keep what was just offered: a snap, or what the tape reads',
  rideStagePullBend: 'In the Ride stage: put a bend into the way to the chosen obstacle; arrows then move it',
  rideStageTakeHold:
    'In the Ride stage: take hold of where the line crosses the poles of the chosen obstacle; arrows move it along them, Tab takes the next pole',
  ctrlShiftZOr: 'Ctrl + Shift + Z or Ctrl + Y',
  justThisPole:
    'Just this pole: the chosen piece moves alone, also in the middle of a drag and right after one; again, and it moves with the others',
  snapping: 'Switch snapping off or on; Alt does the other while it is held',
  goStage: (stage: string) => `Go to the ${stage} stage`,
} as const;
