/** The button of a headset, for the part of the screens that loads later. */
export { browserHeadset, givesHeadset } from '../device/headset.ts';
