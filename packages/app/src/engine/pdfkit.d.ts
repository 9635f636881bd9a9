// What is used of pdfkit, which comes without types.

declare module 'pdfkit' {
  const PDFDocument: import('@shellraise/core').PdfMaker;
  export default PDFDocument;
}
