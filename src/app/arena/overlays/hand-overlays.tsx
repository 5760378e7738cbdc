import { AlongLabel } from './along-bar.tsx';
import { ChosenMenu } from './chosen-menu.tsx';
import { Loupe } from './loupe.tsx';
import { NudgePad } from './nudge-pad.tsx';

/** What the hand brings up over the arena: beside what it drags, and where it asks for more. `print` writes a length. */
export function HandOverlays({ print }: { readonly print: (far: number) => string }) {
  return (
    <>
      <AlongLabel />
      <Loupe print={print} />
      <NudgePad />
      <ChosenMenu />
    </>
  );
}
