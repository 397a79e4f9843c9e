/**
 * `npm run licences`: every package that an install brings, by licence. Fails on one that
 * names none, or one that would ask more of whoever ships the guide than to keep a notice.
 * Read from the installed packages, so it needs no network.
 */
import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Keep the notice, and that is all; CC-BY and OFL are for data and fonts. */
const FREE = new Set(
  [
    'MIT',
    'MIT-0',
    'ISC',
    'BSD',
    'BSD-2-Clause',
    'BSD-3-Clause',
    '0BSD',
    'Apache-2.0',
    'Unlicense',
  ].concat([
    'CC0-1.0',
    'CC-BY-4.0',
    'CC-BY-3.0',
    'OFL-1.1',
    'BlueOak-1.0.0',
    'BSL-1.0',
    'Python-2.0',
    'Zlib',
    'WTFPL',
  ]),
)
/** Copyleft of single files: used as they are, not changed, nothing of ours comes under them. */
const FILE_COPYLEFT = new Set(['MPL-2.0'])

const root = fileURLToPath(new URL('../..', import.meta.url))
const lock = JSON.parse(await readFile(join(root, 'package-lock.json'), 'utf8'))
const byLicence = new Map()
const faults = []
let notHere = 0

for (const [path, entry] of Object.entries(lock.packages)) {
  if (path === '' || entry.link) continue
  const found = await installed(path)
  // Builds for other machines are in the lock file and not on this one.
  if (!found && entry.optional) notHere++
  const licence = found ? await licenceOf(path, found) : entry.license
  const name = `${path.slice(path.lastIndexOf('node_modules/') + 13)}@${entry.version}`
  const kind = entry.dev ? 'to develop' : 'to run'
  const key = licence ?? 'none named'
  byLicence.set(key, [...(byLicence.get(key) ?? []), { name, kind }])
  const fault = faultOf(licence)
  if (fault) faults.push(`${name}: ${key}: ${fault}`)
}

for (const [licence, packages] of [...byLicence].sort(([a], [b]) => (a < b ? -1 : 1))) {
  const toRun = packages.filter(({ kind }) => kind === 'to run').map(({ name }) => name)
  const others = packages.length - toRun.length
  console.log(`${licence}: ${packages.length} (${toRun.length} to run, ${others} to develop)`)
  if (toRun.length > 0) console.log(`  to run: ${toRun.sort().join(', ')}`)
}
console.log(`${notHere} builds for other machines are judged by the lock file alone.`)
console.log(
  'Known weaknesses: not checked here. `npm audit` asks the registry for its advisories; run it where one answers.',
)
for (const fault of faults) console.error(fault)
if (faults.length > 0) process.exit(1)

async function installed(path) {
  const text = await readFile(join(root, path, 'package.json'), 'utf8').catch(() => undefined)
  return text && JSON.parse(text)
}

/** By name in its package.json, in the older ways too; else by the words of its licence file. */
async function licenceOf(path, { license, licenses }) {
  const named = license?.type ?? license ?? licenses?.map?.(({ type }) => type).join(' OR ')
  if (named && !/^SEE LICENSE/i.test(named)) return named
  const files = (await readdir(join(root, path))).filter((name) => /^licen[cs]e/i.test(name))
  const text = files[0] ? await readFile(join(root, path, files[0]), 'utf8') : ''
  if (/Permission is hereby granted, free of charge/.test(text)) return 'MIT'
  if (/Apache License,?\s+Version 2\.0/.test(text)) return 'Apache-2.0'
  return named
}

/** Why an expression is not free enough; undefined when it is. `OR` leaves the choice to us. */
function faultOf(licence) {
  if (!licence) return 'names no licence'
  const ways = licence.replace(/[()]/g, '').split(/ OR /i)
  const isFree = (one) => FREE.has(one.trim()) || FILE_COPYLEFT.has(one.trim())
  if (ways.some((way) => way.split(/ AND /i).every(isFree))) return undefined
  return 'not one of the licences that only ask for a notice'
}
