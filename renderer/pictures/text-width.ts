let context: CanvasRenderingContext2D | null | undefined;

/** The width of a name in the pictures' type, in CSS pixels. */
export function textWidth(text: string): number {
  context ??= window.document.createElement('canvas').getContext('2d');
  if (context === null) return text.length * 7;
  context.font = "13px 'Text Sans', system-ui, sans-serif";
  return Math.ceil(context.measureText(text).width);
}

/** A name broken into lines that fit a width; never shortened. */
export function lines(text: string, width: number): readonly string[] {
  const done: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer) > width) {
      done.push(line);
      line = word;
    } else line = longer;
  }
  return [...done, line];
}
