import type { CameraFile } from '../../src/outing/cameraFile.ts';

/** A picture's file that says nothing of itself. */
export const SILENT_FILE: CameraFile = {
  name: 'ALD_0001.RAW',
  bytes: 1,
  time: null,
  exposureS: null,
  fNumber: null,
  iso: null,
  focalMm: null,
  make: null,
  model: null,
  serial: null,
  lens: null,
  pixelsWide: null,
  pixelsHigh: null,
  temperature: null,
};
