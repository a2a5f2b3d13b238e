/**
 * A desk that loads later than the first script: made when its place first opens, from then on the
 * same one for the same world.
 */
export function madeOnce<W extends object, D>(make: (world: W) => D): (world: W) => D {
  const made = new WeakMap<W, D>();
  return (world) => {
    const desk = made.get(world) ?? make(world);
    made.set(world, desk);
    return desk;
  };
}
