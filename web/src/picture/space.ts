// How does the drive stand in space?  Loaded only when that view is opened.
import { colourOf } from "../show/colour";
import {
  AmbientLight, BufferGeometry, Color, DirectionalLight, DoubleSide, Euler, ExtrudeGeometry, Float32BufferAttribute, Group, InstancedMesh, LatheGeometry,
  Matrix4, Mesh, MeshLambertMaterial, Object3D, Path, PerspectiveCamera, Plane, Raycaster, Scene, Shape, Vector2, Vector3, WebGLRenderer,
} from "three";
import { onPaper } from "../show/paper";
import type { Part, Piece, Solids, Teeth } from "../wire/solids";
import type { View } from "../wire/view";

export interface Shown { cut: "none" | "across" | "along" | "upright"; place: number; apart: number; alone: boolean; casing: boolean; chosen: number }
export interface Space {
  show(how: Shown): void;
  turn(seconds: number, condition: number): void;
  look(around: number, above: number, nearer: number): void;
  stand(name: "behind" | "front" | "side" | "slanting"): void;
  size(width: number, height: number): void;
  colours(): void;
  close(): void;
}

interface Held { part: Part; group: Group; spin: Group; material: MeshLambertMaterial; sign: number; away: Vector3 }

const ROUND = 48;

function colour(name: string): Color {
  return new Color(colourOf(name));
}

/** A section [z, r] turned about z. */
function turned(section: [number, number][]): BufferGeometry {
  const points = [...section, section[0] ?? [0, 0]].map(([z, r]) => new Vector2(Math.max(r, 0), z));
  const made = new LatheGeometry(points, ROUND);
  return made.rotateX(Math.PI / 2); // LatheGeometry turns about y
}

/** One tooth from root to tip as traced, along the face, twisted by the helix; drawn as often as there are teeth. */
function tooth(teeth: Teeth): BufferGeometry {
  const right = teeth.half, left = [...right].reverse().slice(1).map(([x, y]): [number, number] => [-x, y]);
  const edge = [...right, ...left];
  const inner = edge.map(([x, y]): [number, number] => {
    const turn = Math.atan2(x, y), r = teeth.root * 0.985;
    return [r * Math.sin(turn), r * Math.cos(turn)];
  });
  const slices = Math.abs(teeth.twist) > 1e-6 ? 7 : 2;
  const spots: number[] = [], faces: number[] = [];
  const n = edge.length;
  for (let s = 0; s < slices; s++) {
    const part = s / (slices - 1), turn = teeth.twist * (part - 0.5), c = Math.cos(turn), d = Math.sin(turn), z = teeth.from + part * (teeth.to - teeth.from);
    for (const [x, y] of [...edge, ...inner]) spots.push(x * c - y * d, x * d + y * c, z);
  }
  const quad = (a: number, b: number, c: number, d: number): void => { faces.push(a, b, c, a, c, d); };
  for (let i = 0; i + 1 < n; i++) {
    for (let s = 0; s + 1 < slices; s++) quad(2 * n * s + i, 2 * n * s + i + 1, 2 * n * (s + 1) + i + 1, 2 * n * (s + 1) + i);
    const end = 2 * n * (slices - 1);
    quad(i + 1, i, n + i, n + i + 1);
    quad(end + i, end + i + 1, end + n + i + 1, end + n + i);
  }
  const made = new BufferGeometry();
  made.setAttribute("position", new Float32BufferAttribute(spots, 3));
  made.setIndex(faces);
  const flat = made.toNonIndexed();
  flat.computeVertexNormals();
  return flat;
}

function toothed(part: Part, teeth: Teeth, material: MeshLambertMaterial, into: Group): void {
  const root = teeth.root;
  into.add(new Mesh(turned((part.section ?? []).map(([z, r]) => [z, Math.min(r, root)])), material));
  const all = new InstancedMesh(tooth(teeth), material, teeth.count);
  const place = new Matrix4();
  for (let i = 0; i < teeth.count; i++) all.setMatrixAt(i, place.makeRotationZ(teeth.phase + (2 * Math.PI * i) / teeth.count));
  into.add(all);
}

function trace(pieces: Piece[], into: Path): void {
  pieces.forEach((one, index) => {
    if (index === 0) into.moveTo(one.a[0], one.a[1]);
    if (one.centre !== undefined && one.radius !== undefined && one.start !== undefined && one.turn !== undefined)
      into.absarc(one.centre[0], one.centre[1], one.radius, one.start, one.start + one.turn, one.turn < 0);
    else into.lineTo(one.b[0], one.b[1]);
  });
}

function cased(part: Part): BufferGeometry[] {
  const casing = part.casing;
  if (casing === undefined) return [];
  const wall = casing.outside.map((pieces) => { const one = new Shape(); trace(pieces, one); return one; });
  const floor = casing.outside.map((pieces) => { const one = new Shape(); trace(pieces, one); return one; });
  for (const pieces of casing.inside) { const hole = new Path(); trace(pieces, hole); wall[0]?.holes.push(hole); }
  const depth = casing.to - casing.from - 2 * casing.floor;
  const made = (shapes: Shape[], z: number, deep: number): BufferGeometry => new ExtrudeGeometry(shapes, { depth: deep, bevelEnabled: false, curveSegments: 24 }).translate(0, 0, z);
  return [made(wall, casing.from + casing.floor, depth), made(floor, casing.from, casing.floor), made(floor, casing.to - casing.floor, casing.floor)];
}

/** The frame of a part: z along its axis, x to its right. */
function framed(part: Part): Matrix4 {
  const z = new Vector3(...part.axis).normalize(), x = new Vector3(...part.right).normalize();
  return new Matrix4().makeBasis(x, new Vector3().crossVectors(z, x), z).setPosition(...part.origin);
}

/** Which way its own z turns when its shaft turns in its sense: box shafts count about the axis of the engine, radial ones outwards. */
function signOf(part: Part, all: Part[]): number {
  const along = all.find((one) => one.kind === "radial shaft" && one.shaft === part.shaft)?.axis ?? [0, 0, 1];
  const dot = part.axis[0] * along[0] + part.axis[1] * along[1] + part.axis[2] * along[2];
  return part.sense * (dot < 0 ? -1 : 1);
}

/** Where a part goes when all are drawn apart: bodies off their pads, gears and bevels along the axis, boxes outwards. */
function awayOf(part: Part, now: View): Vector3 {
  const shaft = now.shafts[part.shaft];
  const out = part.kind === "casing" ? new Vector3() : new Vector3(shaft?.x ?? 0, shaft?.y ?? 0, 0).multiplyScalar(0.22);
  const along = part.kind === "body" ? 0.2 * Math.sign(part.axis[2]) : part.kind === "casing" ? -0.3 : part.kind === "gear" ? 0.08 : part.kind === "shaft" ? 0 : part.kind === "bevel" ? -0.08 : 0;
  return out.add(new Vector3(0, 0, along));
}

function build(solids: Solids, now: View): Held[] {
  return solids.parts.map((part): Held => {
    const material = new MeshLambertMaterial({ side: DoubleSide, transparent: part.kind === "casing" || part.kind === "body", depthWrite: part.kind !== "casing" && part.kind !== "body" });
    const group = new Group(), spin = new Group();
    if (part.teeth !== undefined && part.teeth.half.length > 2) toothed(part, part.teeth, material, spin);
    else if (part.section !== undefined) spin.add(new Mesh(turned(part.section), material));
    for (const made of cased(part)) spin.add(new Mesh(made, material));
    group.add(spin);
    group.applyMatrix4(framed(part));
    return { part, group, spin, material, sign: signOf(part, solids.parts), away: awayOf(part, now) };
  });
}

function paint(held: Held, now: View, how: Shown): void {
  const { part, material } = held, shaft = now.shafts[part.shaft];
  const chosen = part.shaft >= 0 && part.shaft === how.chosen;
  const tint = (shaft?.sense ?? 0) < 0 ? "gear-cw" : "gear-ccw";
  const base = part.kind === "casing" ? colour("casing") : part.kind === "body" ? colour("ink3") : colour(tint);
  const metal = part.kind === "casing" ? colour("ink2") : part.kind === "body" ? base : base.lerp(colour("ink2"), part.kind === "gear" ? 0.22 : part.kind === "bevel" ? 0.35 : 0.5);
  material.color = chosen ? colour("power") : metal;
  material.opacity = part.kind === "casing" ? 0.1 : part.kind === "body" ? (chosen ? 0.5 : 0.15) : 1;
}

export function standInSpace(place: HTMLElement, solids: Solids, now: View, pick: (shaft: number) => void): Space {
  const renderer = new WebGLRenderer({ antialias: true, preserveDrawingBuffer: true });
  renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
  place.append(renderer.domElement);
  const scene = new Scene(), camera = new PerspectiveCamera(32, 1, 0.01, 20);
  const sun = new DirectionalLight(0xffffff, 2.1), low = new DirectionalLight(0xffffff, 0.8);
  sun.position.set(0.6, 1, 1.2);
  low.position.set(-1, -0.4, 0.6);
  scene.add(new AmbientLight(0xffffff, 1.1), sun, low);
  const all = build(solids, now);
  for (const one of all) scene.add(one.group);
  const middle = new Vector3(), spread = new Vector3();
  const low3 = new Vector3(Infinity, Infinity, Infinity), high3 = new Vector3(-Infinity, -Infinity, -Infinity);
  for (const one of solids.parts) { low3.min(new Vector3(...one.origin)); high3.max(new Vector3(...one.origin)); }
  middle.addVectors(low3, high3).multiplyScalar(0.5);
  const reach = Math.max(0.25, spread.subVectors(high3, low3).length() * 0.5 + 0.16);
  let around = 0.55, above = 0.42, away = reach * 2.7, asked = 0;
  let how: Shown = { cut: "none", place: 0, apart: 0, alone: false, casing: true, chosen: -1 };
  const draw = (): void => {
    asked = 0;
    camera.position.set(middle.x + away * Math.sin(around) * Math.cos(above), middle.y + away * Math.sin(above), middle.z + away * Math.cos(around) * Math.cos(above));
    camera.lookAt(middle);
    renderer.render(scene, camera);
  };
  const soon = (): void => { if (asked === 0) asked = requestAnimationFrame(draw); };
  const space: Space = {
    show: (next) => {
      how = next;
      for (const one of all) {
        one.group.visible = (!how.alone || how.chosen < 0 || one.part.shaft === how.chosen) && (one.part.kind !== "casing" || how.casing);
        one.group.position.set(...one.part.origin).addScaledVector(one.away, how.apart);
        paint(one, now, how);
      }
      const normal = how.cut === "across" ? new Vector3(0, 0, -1) : how.cut === "along" ? new Vector3(-1, 0, 0) : new Vector3(0, -1, 0);
      const from = how.cut === "across" ? low3.z - 0.2 : how.cut === "along" ? low3.x - 0.15 : low3.y - 0.15, to = how.cut === "across" ? high3.z + 0.2 : how.cut === "along" ? high3.x + 0.15 : high3.y + 0.15;
      renderer.clippingPlanes = how.cut === "none" ? [] : [new Plane(normal, from + (to - from) * how.place)];
      soon();
    },
    turn: (seconds, condition) => {
      for (const one of all) {
        const shaft = now.shafts[one.part.shaft];
        one.spin.setRotationFromEuler(new Euler(0, 0, (one.sign * (shaft?.speed[condition] ?? 0) * 2 * Math.PI * seconds) / 60));
      }
      soon();
    },
    look: (a, b, nearer) => {
      around += a;
      above = Math.max(-1.5, Math.min(1.5, above + b));
      away = Math.max(reach * 0.5, Math.min(reach * 12, away * nearer));
      soon();
    },
    stand: (name) => {
      [around, above] = name === "behind" ? [0, 0] : name === "front" ? [Math.PI, 0] : name === "side" ? [Math.PI / 2, 0] : [0.55, 0.42];
      soon();
    },
    size: (width, height) => {
      renderer.setSize(width, height);
      camera.aspect = width / height;
      camera.updateProjectionMatrix();
      soon();
    },
    colours: () => {
      scene.background = colour("paper");
      space.show(how);
    },
    close: () => {
      forget();
      cancelAnimationFrame(asked);
      for (const one of all) {
        one.material.dispose();
        one.group.traverse((each: Object3D) => { if (each instanceof Mesh) (each.geometry as BufferGeometry).dispose(); });
      }
      renderer.dispose();
      renderer.domElement.remove();
    },
  };
  const forget = onPaper(() => {
    space.colours();
    cancelAnimationFrame(asked);
    draw();
  });
  const ray = new Raycaster();
  let from: [number, number] | null = null, moved = false;
  renderer.domElement.addEventListener("pointerdown", (event) => {
    from = [event.clientX, event.clientY];
    moved = false;
    renderer.domElement.setPointerCapture(event.pointerId);
  });
  renderer.domElement.addEventListener("pointermove", (event) => {
    if (from === null) return;
    const x = event.clientX - from[0], y = event.clientY - from[1];
    if (!moved && Math.hypot(x, y) < 4) return;
    moved = true;
    from = [event.clientX, event.clientY];
    space.look(-x / 180, y / 180, 1);
  });
  renderer.domElement.addEventListener("pointerup", (event) => {
    if (from !== null && !moved) {
      const box = renderer.domElement.getBoundingClientRect();
      ray.setFromCamera(new Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2), camera);
      const hit = ray.intersectObjects(all.filter((one) => one.group.visible && one.part.kind !== "casing").map((one) => one.group), true)
        .find((one) => renderer.clippingPlanes.every((plane) => plane.distanceToPoint(one.point) >= 0));
      const of = hit === undefined ? undefined : all.find((one) => { let at: Object3D | null = hit.object; while (at !== null && at !== one.group) at = at.parent; return at !== null; });
      pick(of?.part.shaft ?? -1);
    }
    from = null;
  });
  renderer.domElement.addEventListener("wheel", (event) => {
    event.preventDefault();
    space.look(0, 0, event.deltaY > 0 ? 1.1 : 1 / 1.1);
  }, { passive: false });
  space.colours();
  return space;
}
