import { useEffect, useState } from 'react';
import { setoutWords } from '../../words/setout.ts';

const FRACTIONS: Readonly<Record<string, string>> = setoutWords.spokenFractions;

/** `8¼` as it is spoken: "8 and a quarter"; `½`: "a half". */
function spokenNumber(whole: string, fraction: string): string {
  const part = FRACTIONS[fraction];
  if (part === undefined) return whole;
  return whole === '' ? part : setoutWords.spokenAnd(whole, part);
}

/** A sentence with its lengths as they are spoken: a voice knows no foot marks. */
export function spokenText(text: string): string {
  return text
    .replaceAll('\u00a0', ' ')
    .replace(/3-4-5/g, '3 4 5')
    .replace(/(\d+)' ?(?:(\d*)([¼½¾]?)")?/g, (_, feet: string, inches = '', fraction = '') => {
      const isWhole = (inches === '0' || inches === '') && fraction === '';
      const told = setoutWords.spokenFeet(Number(feet));
      return isWhole
        ? told
        : `${told} ${setoutWords.spokenInches(spokenNumber(inches === '0' ? '' : inches, fraction))}`;
    })
    .replace(/(\d*)([¼½¾]?)"/g, (all, inches: string, fraction: string) =>
      inches === '' && fraction === '' ? all : setoutWords.spokenInches(spokenNumber(inches, fraction)),
    )
    .replace(/([\d.]+) m\b/g, (_, metres: string) => setoutWords.spokenMetres(metres));
}

/** Reading aloud, as it is now. */
export interface Aloud {
  readonly isOn: boolean;
  switch(): void;
}

/** Reads the text aloud while it is switched on, and each one that takes its place; null where the browser has no voice. */
export function useAloud(text: string): Aloud | null {
  const [isOn, setOn] = useState(false);
  useEffect(() => {
    if (!isOn) return;
    speechSynthesis.cancel();
    speechSynthesis.speak(new SpeechSynthesisUtterance(spokenText(text)));
    return () => speechSynthesis.cancel();
  }, [isOn, text]);
  if (!('speechSynthesis' in globalThis && 'SpeechSynthesisUtterance' in globalThis)) return null;
  return { isOn, switch: () => setOn(!isOn) };
}
