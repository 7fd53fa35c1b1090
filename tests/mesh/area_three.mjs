// Prints facets and area of each mesh file named, as JSON lines, by the loaders
// of the npm package three. The first argument is the folder of its install.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

const [folder, ...files] = process.argv.slice(2)
const load = name => import(pathToFileURL(join(folder, 'node_modules/three/examples/jsm/loaders', name)))
const { STLLoader } = await load('STLLoader.js')
const { OBJLoader } = await load('OBJLoader.js')
const { PLYLoader } = await load('PLYLoader.js')

const bytes = file => { const b = readFileSync(file); return b.buffer.slice(b.byteOffset, b.byteOffset + b.byteLength) }

function geometries(file) {
  if (/\.stl$/i.test(file)) return [new STLLoader().parse(bytes(file))]
  if (/\.ply$/i.test(file)) return [new PLYLoader().parse(bytes(file))]
  const found = []
  new OBJLoader().parse(readFileSync(file, 'utf8')).traverse(part => part.isMesh && found.push(part.geometry))
  return found
}

for (const file of files) {
  let area = 0, facets = 0
  for (const geometry of geometries(file)) {
    const place = geometry.getAttribute('position'), index = geometry.getIndex()
    const count = index ? index.count : place.count
    const corner = i => { const n = index ? index.getX(i) : i; return [place.getX(n), place.getY(n), place.getZ(n)] }
    for (let i = 0; i + 2 < count; i += 3) {
      const [a, b, c] = [corner(i), corner(i + 1), corner(i + 2)]
      const [u, v] = [b, c].map(p => p.map((x, k) => x - a[k]))
      area += Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2
      facets++
    }
  }
  console.log(JSON.stringify({ file, facets, area }))
}
