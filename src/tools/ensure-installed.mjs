/**
 * Before start and test on a fresh clone: installs the packages of the lockfile when
 * they are missing or older than it, and with --browser makes sure that a Chromium is
 * there. Plain Node, because nothing is installed yet when it runs.
 */
import { spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync, statSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const LEAST_NODE = [20, 19]
const root = fileURLToPath(new URL('../..', import.meta.url))

requireNode()
if (!packagesAreFresh()) install()
if (process.argv.includes('--browser') && findChromium() === undefined) installChromium()

function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  const [leastMajor, leastMinor] = LEAST_NODE
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return
  fail(`Mainstay needs Node ${LEAST_NODE.join('.')} or later; this is ${process.versions.node}.`)
}

/** npm writes node_modules/.package-lock.json last, so its age is that of the installation. */
function packagesAreFresh() {
  const installed = join(root, 'node_modules', '.package-lock.json')
  if (!existsSync(installed)) return false
  return statSync(installed).mtimeMs >= statSync(join(root, 'package-lock.json')).mtimeMs
}

function install() {
  console.log('Installing the packages of package-lock.json …')
  run(
    'npm',
    ['ci', '--include=dev', '--no-audit', '--no-fund'],
    'The packages could not be installed.',
  )
}

/** A runnable Chromium: CHROMIUM_PATH when given, else the usual places on the PATH. */
function findChromium() {
  const given = process.env.CHROMIUM_PATH
  if (given) {
    if (isRunnable(given)) return given
    fail(`CHROMIUM_PATH is ${given}, which is no program that can be run.`)
  }
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter)]
  return folders.map((folder) => join(folder, 'chromium')).find(isRunnable)
}

function isRunnable(path) {
  try {
    accessSync(path, constants.X_OK)
    return statSync(path).isFile()
  } catch {
    return false
  }
}

function installChromium() {
  const help =
    'Install Chromium, or set CHROMIUM_PATH to an installed Chromium or Chrome, and try again.'
  if (!isRunnable('/usr/bin/apt-get')) fail(`The browser tests need Chromium. ${help}`)
  console.log('Installing Chromium for the browser tests …')
  const isRoot = process.getuid?.() === 0
  const sudo = !isRoot && isRunnable('/usr/bin/sudo') ? ['sudo'] : []
  for (const step of [['update'], ['install', '-y', 'chromium']]) {
    const [command, ...rest] = [...sudo, 'apt-get', ...step]
    run(command, rest, `apt-get ${step.join(' ')} failed. ${help}`)
  }
  if (findChromium() === undefined) fail(`No chromium was found after installing it. ${help}`)
}

function run(command, args, complaint) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  const { status, error } = spawnSync(command, args, { cwd: root, env, stdio: 'inherit' })
  if (status !== 0) fail(error ? `${complaint} (${error.message})` : complaint)
}

function fail(message) {
  console.error(message)
  process.exit(1)
}
