export const show = dialog => { if (!dialog.open) dialog.showModal(); };
export const close = dialog => dialog.close();
