// Lets files be dropped anywhere on the form. The field works without this.

for (const form of document.querySelectorAll("form.drop")) {
  const field = form.querySelector("input[type=file]");
  const over = (is) => (event) => {
    event.preventDefault();
    form.classList.toggle("over", is);
  };
  form.addEventListener("dragenter", over(true));
  form.addEventListener("dragover", over(true));
  form.addEventListener("dragleave", over(false));
  form.addEventListener("drop", (event) => {
    over(false)(event);
    if (!event.dataTransfer?.files.length) return;
    field.files = event.dataTransfer.files;
    form.querySelector("button").focus();
  });
}
