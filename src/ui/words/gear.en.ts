export const gear = {};
