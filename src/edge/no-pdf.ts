/** Stands in for the PDF library where there is none; nothing there asks for a PDF. */
class NoPdf {
  constructor() {
    throw new Error('this host draws no PDF')
  }
}

export { NoPdf as default }
