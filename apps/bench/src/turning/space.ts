/** The picture in space: facets in the colour of the sheet hide what lies behind them, ink lines are all that is seen. Loaded when it is first asked for. */
import { times } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { LineType } from '@oddwheel/sheets/drawing';
import { EDGE_NUMBERS } from '@oddwheel/sheets/space-mesh';
import type { SpacePart } from '@oddwheel/sheets/space-parts';
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  ColorManagement,
  DoubleSide,
  Group,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  LinearSRGBColorSpace,
  Mesh,
  MeshBasicMaterial,
  OrthographicCamera,
  Raycaster,
  Scene,
  ShaderMaterial,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { LINE_FRAGMENT, LINE_VERTEX } from './line-shader.ts';
import type { Framing } from './sight.ts';

/** Colours of the page as it is now. */
export interface Inks {
  readonly sheet: string;
  readonly ink: string;
  readonly mark: string;
  readonly wash: string;
}

export interface Space {
  readonly setParts: (parts: readonly SpacePart[]) => void;
  readonly setInks: (inks: Inks) => void;
  readonly setFraming: (framing: Framing) => void;
  /** Parts that are drawn in mark on wash, and go along with a move. */
  readonly setChosen: (chosen: (part: SpacePart) => boolean) => void;
  /** Shifts what is chosen, m in vehicle axes. */
  readonly shift: (by: Vec3) => void;
  /** Draws chains and belts in the place of their own until nothing is moved any more. */
  readonly redraw: (parts: readonly SpacePart[]) => void;
  /** The part under a place of the picture, px; what must be kept clear only where nothing else is. */
  readonly pick: (x: number, y: number) => SpacePart | null;
  readonly dispose: () => void;
}

/** Widths, px, and dashes of the lines that parts are drawn in (ISO 128). */
const LINES: Readonly<Record<LineType, { readonly width: number; readonly dashes: readonly number[] }>> = {
  visible: { width: 1.7, dashes: [] },
  thin: { width: 0.85, dashes: [] },
  hidden: { width: 0.85, dashes: [5, 2.5] },
  centre: { width: 0.85, dashes: [16, 3, 2, 3] },
  'keep-out': { width: 1, dashes: [16, 3, 2, 3, 2, 3] },
};
/** On a small picture lines are so much thinner, as those of the drawing are. */
const SMALL = { below: 600, thinner: 0.65, least: 0.75 } as const;
/** Sharper than this the screen shows no difference. */
const MOST_PIXELS = 2;
/** The corners of a line's strip: along it, and to its two sides. */
const STRIP = Float32Array.of(0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0);
const STRIP_FACES = [0, 1, 2, 0, 2, 3];
/** Whoever looks stands so far off over the size of what is seen, so that nothing is cut off. */
const FAR_OFF = 4;

/** What all lines of one look and colour share. */
interface Pens {
  readonly ink: Readonly<Record<LineType, ShaderMaterial>>;
  readonly mark: Readonly<Record<LineType, ShaderMaterial>>;
  readonly sheet: MeshBasicMaterial;
  readonly wash: MeshBasicMaterial;
}

interface Drawn {
  readonly part: SpacePart;
  readonly group: Group;
  readonly facets: Mesh<BufferGeometry, MeshBasicMaterial>;
  readonly lines: Mesh<InstancedBufferGeometry, ShaderMaterial>;
}

function pen(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: LINE_VERTEX,
    fragmentShader: LINE_FRAGMENT,
    side: DoubleSide,
    uniforms: {
      halfSize: { value: new Vector2(1, 1) },
      lineWidth: { value: 1 },
      nearer: { value: 0 },
      towards: { value: new Vector3(0, 0, 1) },
      ink: { value: new Color() },
      dashes: { value: [0, 0, 0, 0, 0, 0] },
      period: { value: 0 },
    },
  });
}

const penSet = (): Readonly<Record<LineType, ShaderMaterial>> => ({
  visible: pen(),
  thin: pen(),
  hidden: pen(),
  centre: pen(),
  'keep-out': pen(),
});

const facing = (): MeshBasicMaterial =>
  new MeshBasicMaterial({ side: DoubleSide, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });

/** An own value of a pen. */
function set(material: ShaderMaterial, name: string, value: unknown): void {
  const uniform = material.uniforms[name];
  if (uniform) uniform.value = value;
}

function linesOf({ edges }: SpacePart): InstancedBufferGeometry {
  const geometry = new InstancedBufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(STRIP, 3));
  geometry.setIndex(STRIP_FACES);
  const buffer = new InstancedInterleavedBuffer(edges, EDGE_NUMBERS);
  ['from', 'to', 'one', 'other'].forEach((name, k) => {
    geometry.setAttribute(name, new InterleavedBufferAttribute(buffer, 3, 3 * k));
  });
  geometry.setAttribute('part', new InterleavedBufferAttribute(buffer, 1, EDGE_NUMBERS - 1));
  geometry.instanceCount = edges.length / EDGE_NUMBERS;
  return geometry;
}

/**
 * Starts the picture on a canvas. It draws only when something changed.
 * @throws Error where the browser has no WebGL
 */
export function startSpace(canvas: HTMLCanvasElement): Space {
  // What is drawn stays until it is drawn anew, for paper too.
  const context = canvas.getContext('webgl2', { antialias: true, preserveDrawingBuffer: true });
  if (!context) throw new Error('The browser gives no WebGL.');
  // Colours go to the screen as the page has them.
  ColorManagement.enabled = false;
  const renderer = new WebGLRenderer({ canvas, context });
  renderer.outputColorSpace = LinearSRGBColorSpace;
  const scene = new Scene();
  const camera = new OrthographicCamera();
  const caster = new Raycaster();
  const pens: Pens = { ink: penSet(), mark: penSet(), sheet: facing(), wash: facing() };
  let drawn: readonly Drawn[] = [];
  let instead: readonly Drawn[] = [];
  let chosen: (part: SpacePart) => boolean = () => false;
  let framing: Framing | null = null;
  let sized = '';
  let frame = 0;

  const draw = (): void => {
    cancelAnimationFrame(frame);
    frame = 0;
    if (framing) renderer.render(scene, camera);
  };
  const changed = (): void => {
    if (frame === 0) frame = requestAnimationFrame(draw);
  };

  const dress = ({ part, facets, lines }: Drawn, picked: boolean): void => {
    facets.material = picked ? pens.wash : pens.sheet;
    lines.material = (picked ? pens.mark : pens.ink)[part.line];
    // What is chosen is drawn last, so that its lines stand over others that coincide.
    lines.renderOrder = picked ? 2 : 1;
  };
  const add = (part: SpacePart, picked: boolean): Drawn => {
    const surface = new BufferGeometry();
    surface.setAttribute('position', new BufferAttribute(part.facets, 3));
    const facets = new Mesh(surface, pens.sheet);
    facets.visible = part.fill === 'sheet' && part.facets.length > 0;
    const lines = new Mesh(linesOf(part), pens.ink[part.line]);
    lines.frustumCulled = false;
    const group = new Group();
    group.add(facets, lines);
    scene.add(group);
    const one: Drawn = { part, group, facets, lines };
    dress(one, picked);
    return one;
  };
  const remove = ({ group, facets, lines }: Drawn): void => {
    scene.remove(group);
    facets.geometry.dispose();
    lines.geometry.dispose();
  };
  const putBack = (): void => {
    for (const one of instead) remove(one);
    instead = [];
    for (const { group } of drawn) group.visible = true;
  };

  const look = (): void => {
    if (!framing) return;
    const { axes, centre, scale, width, height } = framing;
    const pixels = Math.min(MOST_PIXELS, window.devicePixelRatio);
    // Setting a size takes a new buffer, even where it is the same.
    const size = [width, height, pixels].join(' ');
    if (size !== sized) {
      sized = size;
      renderer.setPixelRatio(pixels);
      renderer.setSize(width, height, false);
    }
    const reach = drawn.reduce((most, { part }) => {
      const far = [part.least, part.most].flatMap((at) => at.map((x, k) => Math.abs(x - (centre[k] ?? 0))));
      return Math.max(most, ...far);
    }, 1);
    const away = FAR_OFF * reach;
    const from = new Vector3(...centre).addScaledVector(new Vector3(...axes.towards), away);
    camera.up.set(...axes.up);
    camera.position.copy(from);
    camera.lookAt(new Vector3(...centre));
    Object.assign(camera, {
      left: (-width * scale) / 2,
      right: (width * scale) / 2,
      top: (height * scale) / 2,
      bottom: (-height * scale) / 2,
      near: 0,
      far: 2 * away,
    });
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
    for (const colour of [pens.ink, pens.mark])
      for (const line of Object.keys(LINES) as LineType[]) {
        const material = colour[line];
        set(material, 'halfSize', new Vector2((width * pixels) / 2, (height * pixels) / 2));
        const thinner = width < SMALL.below ? SMALL.thinner : 1;
        set(material, 'lineWidth', Math.max(SMALL.least, LINES[line].width * thinner) * pixels);
        set(material, 'nearer', (scale + 0.2) / away);
        set(material, 'towards', new Vector3(...axes.towards));
        const dashes = LINES[line].dashes.map((one) => one * pixels);
        set(
          material,
          'dashes',
          Array.from({ length: 6 }, (_, k) => dashes[k] ?? 0),
        );
        set(
          material,
          'period',
          dashes.reduce((sum, one) => sum + one, 0),
        );
      }
    changed();
  };

  canvas.addEventListener('webglcontextrestored', changed);

  return {
    setParts: (parts) => {
      putBack();
      for (const one of drawn) remove(one);
      drawn = parts.map((part) => add(part, chosen(part)));
      look();
    },
    setInks: ({ sheet, ink, mark, wash }) => {
      renderer.setClearColor(new Color(sheet));
      pens.sheet.color.set(sheet);
      pens.wash.color.set(wash);
      for (const material of Object.values(pens.ink)) set(material, 'ink', new Color(ink));
      for (const material of Object.values(pens.mark)) set(material, 'ink', new Color(mark));
      // Paper waits for no frame.
      draw();
    },
    setFraming: (next) => {
      framing = next;
      look();
    },
    setChosen: (next) => {
      chosen = next;
      for (const one of drawn) dress(one, chosen(one.part));
      changed();
    },
    shift: (by) => {
      const mm = times(1000, by);
      for (const { part, group } of drawn) {
        if (chosen(part)) group.position.set(...mm);
        else group.position.set(0, 0, 0);
      }
      if (mm.every((x) => x === 0)) putBack();
      changed();
    },
    redraw: (parts) => {
      putBack();
      const anew = new Set(parts.map(({ of }) => of));
      for (const { part, group } of drawn) if (anew.has(part.of)) group.visible = false;
      instead = parts.map((part) => add(part, true));
      changed();
    },
    pick: (x, y) => {
      if (!framing) return null;
      caster.setFromCamera(new Vector2((2 * x) / framing.width - 1, 1 - (2 * y) / framing.height), camera);
      const hits = caster.intersectObjects(drawn.map(({ facets }) => facets)).map(({ object }) => object);
      const found = hits.flatMap((hit) => drawn.filter(({ facets }) => facets === hit)).map(({ part }) => part);
      return found.find(({ fill }) => fill === 'sheet') ?? found[0] ?? null;
    },
    dispose: () => {
      cancelAnimationFrame(frame);
      canvas.removeEventListener('webglcontextrestored', changed);
      putBack();
      for (const one of drawn) remove(one);
      for (const material of [...Object.values(pens.ink), ...Object.values(pens.mark), pens.sheet, pens.wash])
        material.dispose();
      renderer.dispose();
      // A browser has few of these to give.
      context.getExtension('WEBGL_lose_context')?.loseContext();
    },
  };
}
