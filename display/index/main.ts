/** Shows the address at which this page was reached: what other devices of the house type in. */
const address = document.querySelector('#address');
if (address !== null) address.textContent = location.origin;
