/** Whether a person types or chooses there, so that keys mean something else. */
export function takesKeys(target: EventTarget): boolean {
  return target instanceof Element && target.matches('input:not([type="checkbox"]), select, textarea');
}
