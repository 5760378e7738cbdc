/** Konva alone: 60 poles and 400 prints on one layer, of which a group of six poles is dragged. The size is in the address. */
import Konva from 'konva';

const POLES = 60;
const PRINTS = 400;
const DRAGGED = 6;

const asked = new URLSearchParams(location.search);
const [width, height] = [Number(asked.get('width')), Number(asked.get('height'))];
const stage = new Konva.Stage({ container: 'stage', width, height });
const layer = new Konva.Layer();
const group = new Konva.Group({ draggable: true });

function pole(index: number): Konva.Rect {
  return new Konva.Rect({
    x: 40 + ((index * 97) % (width - 120)),
    y: 40 + ((index * 61) % (height - 120)),
    width: 60,
    height: 3,
    rotation: (index * 37) % 180,
    fill: '#b98f5a',
    stroke: '#4a3a22',
    strokeWidth: 0.8,
  });
}

for (let i = DRAGGED; i < POLES; i += 1) layer.add(pole(i));
for (let i = 0; i < PRINTS; i += 1) {
  const [x, y] = [20 + ((i * 53) % (width - 40)), 20 + ((i * 29) % (height - 40))];
  layer.add(new Konva.Ellipse({ x, y, radiusX: 4, radiusY: 3, fill: '#7a4b2a', stroke: '#f4ecdc', strokeWidth: 1 }));
}
// Where the bench presses: in the middle of the stage, on the first pole of the group.
for (let i = 0; i < DRAGGED; i += 1) {
  const [x, y] = [width / 2 - 30, height / 2 - 6 + 14 * i];
  group.add(new Konva.Rect({ x, y, width: 60, height: 12, fill: '#b98f5a', stroke: '#4a3a22', strokeWidth: 0.8 }));
}
layer.add(group);
stage.add(layer);
