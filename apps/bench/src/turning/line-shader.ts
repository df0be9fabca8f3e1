/** Lines of a width in px, each a strip of its own: those whose two facets both face whoever looks, or both do not, are left out. */

export const LINE_VERTEX = `
uniform vec2 halfSize;
uniform float lineWidth;
uniform float nearer;
uniform vec3 towards;
attribute vec3 from;
attribute vec3 to;
attribute vec3 one;
attribute vec3 other;
attribute float part;
varying float along;

void main() {
  along = 0.0;
  if (dot(one, towards) * dot(other, towards) > 1e-6) {
    gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
    return;
  }
  vec4 start = projectionMatrix * modelViewMatrix * vec4(from, 1.0);
  vec4 end = projectionMatrix * modelViewMatrix * vec4(to, 1.0);
  vec2 a = start.xy * halfSize;
  vec2 b = end.xy * halfSize;
  float size = length(b - a);
  vec2 way = size > 1e-4 ? (b - a) / size : vec2(1.0, 0.0);
  vec2 side = vec2(-way.y, way.x);
  float reach = 0.5 * lineWidth * part;
  vec2 at = mix(a, b, position.x) + (2.0 * position.x - 1.0) * 0.5 * reach * way + position.y * reach * side;
  along = position.x * size;
  gl_Position = vec4(at / halfSize, mix(start.z, end.z, position.x) - nearer, 1.0);
}
`;

export const LINE_FRAGMENT = `
uniform vec3 ink;
uniform float dashes[6];
uniform float period;
varying float along;

void main() {
  if (period > 0.0) {
    float left = mod(along, period);
    bool drawn = false;
    float start = 0.0;
    for (int k = 0; k < 6; k += 2) {
      if (left >= start && left < start + dashes[k]) drawn = true;
      start += dashes[k] + dashes[k + 1];
    }
    if (!drawn) discard;
  }
  gl_FragColor = vec4(ink, 1.0);
}
`;
