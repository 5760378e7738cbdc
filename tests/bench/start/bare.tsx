/** React and Konva alone: one stage, one layer, some shapes, of which one is dragged. It takes no more of Konva than that. */
import 'konva/lib/shapes/Line';
import 'konva/lib/shapes/Rect';
import { useState } from 'react';
import { createRoot } from 'react-dom/client';
import { Layer, Line, Rect, Stage } from 'react-konva/lib/ReactKonvaCore';

const POLES = Array.from({ length: 10 }, (_, i) => 300 + 40 * i);

function Page() {
  const [x, setX] = useState(100);
  return (
    <>
      <Stage width={800} height={600}>
        <Layer>
          <Line points={[40, 560, 400, 40, 760, 560]} stroke="#7a4b2a" />
          {POLES.map((left) => (
            <Rect key={left} x={left} y={200} width={4} height={120} fill="#b98f5a" />
          ))}
          <Rect
            x={x}
            y={100}
            width={120}
            height={20}
            fill="#b98f5a"
            draggable={true}
            onDragEnd={({ target }) => setX(target.x())}
          />
        </Layer>
      </Stage>
      <output>{x}</output>
    </>
  );
}

const place = document.getElementById('app');
if (place === null) throw new Error('bare: index.html has no element with the id "app"');
createRoot(place).render(<Page />);
