const NO_BREAK = '\u00a0';

/** The space between feet and inches, and between a number and its unit. */
const INSIDE_LENGTH = /(?<=\d['′]) (?=\d|[¼½¾])|(?<=\d) (?=(?:mm|cm|m|ft|min|s|h)\b)/g;

/** A text in which no length and no time breaks across lines: `6' 3½"`, `1.90 m`, `2 min`. */
export function withoutBreaks(text: string): string {
  return text.replace(INSIDE_LENGTH, NO_BREAK);
}

/** The props of an element of the page, with its own texts as they are set on the screen; the same object if none changes. */
export function propsWithoutBreaks<Props>(type: unknown, props: Props): Props {
  // A component's children are its own business: what it makes of them comes here again.
  if (typeof type !== 'string' || props === null || typeof props !== 'object' || !('children' in props)) return props;
  const { children } = props;
  if (typeof children === 'string') {
    const text = withoutBreaks(children);
    return text === children ? props : { ...props, children: text };
  }
  if (!Array.isArray(children)) return props;
  const texts: readonly unknown[] = children.map((each) => (typeof each === 'string' ? withoutBreaks(each) : each));
  return texts.every((each, index) => each === children[index]) ? props : { ...props, children: texts };
}
