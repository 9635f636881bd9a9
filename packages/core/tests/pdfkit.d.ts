// What is used of pdfkit, which comes without types.

declare module 'pdfkit' {
  const PDFDocument: import('../src/papers/pdf.ts').PdfMaker;
  export default PDFDocument;
}
