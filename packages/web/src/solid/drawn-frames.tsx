import { useFrame, useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { followPins, forgetPicture } from './pins.js';

/** After each picture: what is pinned follows, and the canvas tells what it took to draw it. */
export function DrawnFrames() {
  const gl = useThree((s) => s.gl);
  useEffect(() => forgetPicture, []);
  // A positive priority takes the drawing over, so that the count is that of this very picture.
  useFrame(({ camera, size, scene }) => {
    gl.render(scene, camera);
    followPins(camera, size.width, size.height);
    const { calls, triangles, lines, frame } = gl.info.render;
    Object.assign(gl.domElement.dataset, {
      calls: String(calls),
      triangles: String(triangles),
      lines: String(lines),
      frame: String(frame),
    });
  }, 1);
  return null;
}
