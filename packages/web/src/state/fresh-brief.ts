/** The least brief to start from: a small room with one door, to be measured over. */
export const freshBrief = `cloche: 1
project:
  name: New project
room:
  name: Room
  outline: [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m], [0 m, 4 m]]
  height: 3 m
  doors:
    - { id: door-1, wall: 0, at: 0.5 m, width: 1 m, height: 2.1 m, swing: out, hinge: left, exit: true }
`;
