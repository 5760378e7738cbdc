import { clearanceBetween, pieceSizes, polesOf, sizeCheck } from '../findings/dimension.ts';

export const squarePole = sizeCheck({
  id: 'square-pole',
  says: 'A square that is ridden round inside has long enough poles.',
  because: 'In a smaller square the circle round the marker is tighter than a jog can be.',
  weight: 'must',
  limit: 'square.pole',
  what: 'the length of a pole of',
  param: 'length',
  onlyDeclared: true,
  sizes: (obstacle) => pieceSizes(polesOf(obstacle), ({ figure }) => figure.length),
});

export const boxSide = sizeCheck({
  id: 'box-side',
  says: 'A box to turn in has the size that the book gives.',
  because: 'In a smaller box the horse steps out behind; in a larger one the turn asks for nothing.',
  weight: 'must',
  limit: 'box.side',
  what: 'the inside of',
  param: 'side',
  onlyDeclared: true,
  sizes(obstacle, survey) {
    const { id, passages } = obstacle.obstacle;
    const turns = (passage: string): boolean =>
      passages.some((each) => each.id === passage && each.stations.some((station) => station.kind === 'turn'));
    const turnedIn = survey.layout.ride.legs.some((leg) => leg.obstacle === id && turns(leg.passage));
    if (!turnedIn) return [];
    // Opposite poles are the ones that lie in line with each other; neighbours are square.
    const poles = polesOf(obstacle);
    return poles.flatMap((a, i) =>
      poles
        .slice(i + 1)
        .filter((b) => Math.abs(Math.cos(a.pose.angle - b.pose.angle)) > 0.7)
        .map((b) => clearanceBetween(a, b)),
    );
  },
});
