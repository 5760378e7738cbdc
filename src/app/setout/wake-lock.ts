import { useEffect } from 'react';

/** Keeps the screen lit while the component is there, where the browser can; it asks anew when the page is seen again. */
export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let isOver = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        const taken = await navigator.wakeLock?.request('screen');
        if (isOver) await taken?.release();
        else lock = taken;
      } catch {
        // A low battery or the browser's settings say no: the screen goes dark as it always does.
      }
    };
    void ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release().catch(() => undefined);
    };
  }, []);
}
