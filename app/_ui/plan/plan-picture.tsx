import { DrawingShapes } from '#app/_ui/drawing-shapes.tsx';
import type { Drawing } from '#lib/documents/drawings/drawing.ts';
import styles from './plan-sheet.module.css';
import { PlanWide } from './plan-wide.tsx';

/** A drawing in the theme's colours; its description is read out and stands below for those who want it in words. */
export function PlanPicture({ drawing, id }: { readonly drawing: Drawing; readonly id: string }) {
  return (
    <figure className={styles.picture}>
      <PlanWide label={drawing.title}>
        <svg viewBox={`0 0 ${drawing.width} ${drawing.height}`} role="img" aria-labelledby={`${id}-t ${id}-d`}>
          <title id={`${id}-t`}>{drawing.title}</title>
          <desc id={`${id}-d`}>{drawing.description}</desc>
          <DrawingShapes shapes={drawing.shapes} />
        </svg>
      </PlanWide>
      <figcaption>
        {drawing.title}.{' '}
        <details>
          <summary>The picture in words</summary>
          {drawing.description}
        </details>
      </figcaption>
    </figure>
  );
}
