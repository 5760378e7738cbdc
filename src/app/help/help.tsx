import { CircleHelp } from 'lucide-react';
import { useState } from 'react';
import { terms } from '../../words/terms.ts';
import { Dialog } from '../dialog.tsx';
import { lazyComponent } from '../lazy-panel.tsx';

const Help = lazyComponent(() => import('./help-pages.tsx').then((module) => module.Help));

export function HelpButton() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="quiet worded" onClick={() => setOpen(true)}>
        <CircleHelp aria-hidden="true" />
        <span>{terms.help}</span>
      </button>
      {isOpen && (
        <Dialog wide title={terms.help} close={() => setOpen(false)}>
          <Help />
        </Dialog>
      )}
    </>
  );
}
