export { fly } from '/work/wt/aero/src/index.js'
