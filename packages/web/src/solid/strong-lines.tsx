import { useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import type { Plane } from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import { flatPoints, type Stretch } from './geometry.js';

interface StrongLinesProps {
  readonly stretches: readonly Stretch[];
  readonly color: string;
  /** Pixels of the screen. */
  readonly width: number;
  readonly planes?: readonly Plane[];
  /** Seen through what stands before it. */
  readonly through?: boolean;
  readonly opacity?: number;
}

/** Lines wider than one pixel: cut edges, beams, and what is in hand. */
export function StrongLines({ stretches, color, width, planes, through = false, opacity = 1 }: StrongLinesProps) {
  const invalidate = useThree((s) => s.invalidate);
  const lines = useMemo(() => {
    const material = new LineMaterial({ color, linewidth: width, opacity, transparent: opacity < 1 || through });
    material.depthTest = !through;
    const made = new LineSegments2(new LineSegmentsGeometry(), material);
    made.renderOrder = through ? 3 : 1;
    return made;
  }, [color, width, through, opacity]);
  useEffect(() => () => lines.material.dispose(), [lines]);
  useEffect(() => {
    const geometry = new LineSegmentsGeometry();
    geometry.setPositions(flatPoints(stretches.flat()));
    lines.geometry = geometry;
    lines.visible = stretches.length > 0;
    invalidate();
    return () => geometry.dispose();
  }, [lines, stretches, invalidate]);
  useEffect(() => {
    lines.material.clippingPlanes = planes ? [...planes] : null;
    invalidate();
  }, [lines, planes, invalidate]);
  return <primitive object={lines} />;
}
