// After a refused form the summary of its errors takes the focus, so that a screen reader and the keyboard begin there.
document.querySelector("[data-focus]")?.focus();
