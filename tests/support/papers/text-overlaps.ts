/** Which texts of a drawing cover each other, and which leave the drawing. */
import type { Drawing, TextShape } from '#lib/documents/drawings/drawing.ts';
import { textBox } from '#lib/documents/drawings/shapes.ts';

export function textOverlaps(drawing: Drawing): readonly string[] {
  const texts = drawing.shapes.filter((shape): shape is TextShape => shape.kind === 'text');
  const boxes = texts.map((shape) => ({ text: shape.text, ...textBox(shape) }));
  const found: string[] = [];
  boxes.forEach((a, index) => {
    if (a.x < -0.01 || a.y < -0.01 || a.x + a.width > drawing.width + 0.01 || a.y + a.height > drawing.height + 0.01)
      found.push(`${a.text} leaves the drawing`);
    for (const b of boxes.slice(index + 1)) {
      const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      if (across > 0.3 && down > 0.3) found.push(`${a.text} covers ${b.text}`);
    }
  });
  return found;
}
