/** On the invented shop's page: lists the events that the element gives its host. */
const told = document.querySelector('#told')

for (const name of ['ready', 'answer', 'call']) {
  document.addEventListener(name, (event) => {
    const line = document.createElement('li')
    line.textContent = `${name} ${JSON.stringify((event as CustomEvent).detail)}`
    told?.prepend(line)
  })
}
