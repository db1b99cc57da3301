/**
 * Stands in a page's own mark until every page is written: the mark is a digest of the page, and a page cannot hold its
 * own. As long as a mark, so that nothing moves.
 */
export const PAGE_MARK_PLACE = 'pagemark';
