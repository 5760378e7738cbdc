import { CircleHelp } from 'lucide-react';
import { useState } from 'react';
import { helpWords } from '../../words/help.ts';
import { Dialog } from '../dialog.tsx';
import { lazyComponent } from '../lazy-panel.tsx';

const Help = lazyComponent(() => import('./help-pages.tsx').then((module) => module.Help));

export function HelpButton() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="quiet worded" onClick={() => setOpen(true)}>
        <CircleHelp aria-hidden="true" />
        <span>{helpWords.help}</span>
      </button>
      {isOpen && (
        <Dialog wide title={helpWords.help} close={() => setOpen(false)}>
          <Help />
        </Dialog>
      )}
    </>
  );
}
