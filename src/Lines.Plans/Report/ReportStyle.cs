namespace Lines.Plans.Report;

/// <summary>The style sheet of the report: one column of text, the drawing as wide as the page, light and dark, screen and paper.</summary>
internal static class ReportStyle
{
    /// <summary>The rules.</summary>
    public const string Css = """
        :root { color-scheme: light dark; --paper: #fdfdfb; --ink: #1d2226; --soft: #59626a; --rule: #cfd4d6; --tint: #f0f2f0; --link: #1f4f86; --bad: #8f1d14; }
        @media (prefers-color-scheme: dark) {
          :root { --paper: #16191c; --ink: #e4e6e4; --soft: #a3abb0; --rule: #3c4449; --tint: #20262a; --link: #9cc3f2; --bad: #f5a59c; }
        }
        * { box-sizing: border-box; }
        html { font: 1.0625rem/1.5 Charter, "Bitstream Charter", Cambria, "Noto Serif", Georgia, serif; }
        body { margin: 0; background: var(--paper); color: var(--ink); overflow-wrap: break-word; }
        main, header, footer { max-width: 62rem; margin: 0 auto; padding: 0 1.25rem; }
        header { padding-top: 2.25rem; }
        h1 { font-size: 2.1rem; line-height: 1.15; font-weight: 600; margin: 0; }
        header p { margin: .4rem 0 0; max-width: 44rem; }
        h2 { font-size: 1.35rem; font-weight: 600; margin: 2.5rem 0 .75rem; padding-top: .6rem; border-top: 2px solid var(--ink); }
        h3 { font-size: 1.05rem; font-weight: 600; margin: 1.25rem 0 .35rem; }
        p, ul { max-width: 44rem; }
        a { color: var(--link); }
        a:focus-visible, [tabindex]:focus-visible, summary:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
        .verdict { font-size: 1.15rem; font-weight: 600; }
        .bad { color: var(--bad); font-weight: 600; }
        .plan { margin: 0; }
        .plan div { background: #fff; border: 1px solid var(--rule); overflow-x: auto; }
        .plan svg { display: block; width: 100%; min-width: 56rem; height: auto; }
        figcaption, .note { color: var(--soft); font-size: .9rem; }
        .groups { columns: 2 24rem; column-gap: 2.5rem; }
        .groups table { break-inside: avoid; }
        table { border-collapse: collapse; width: 100%; font-size: .95rem; font-variant-numeric: tabular-nums lining-nums; }
        caption { text-align: left; font-weight: 600; font-size: 1.05rem; padding: .9rem 0 .3rem; }
        th, td { text-align: left; vertical-align: baseline; padding: .28rem .9rem .28rem 0; border-bottom: 1px solid var(--rule); font-weight: 400; }
        thead th { color: var(--soft); font-size: .85rem; border-bottom: 1px solid var(--ink); vertical-align: bottom; }
        td.n, th.n { text-align: right; white-space: nowrap; }
        td:last-child, th:last-child { padding-right: 0; }
        .scroll { overflow-x: auto; }
        summary { cursor: pointer; margin: 1rem 0 .5rem; }
        .cautions li { margin-bottom: .35rem; }
        footer { color: var(--soft); font-size: .9rem; padding: 2rem 1.25rem 2.5rem; }
        @media print {
          @page { size: letter; margin: 15mm; }
          :root { --paper: #fff; --ink: #000; --soft: #444; --rule: #999; --link: #000; --bad: #000; }
          html { font-size: 10.5pt; }
          main, header, footer { max-width: none; padding: 0; }
          h2, h3, caption, thead, section > p { break-after: avoid; }
          h2 { margin-top: 1.6rem; }
          p, tr, li, caption, thead { break-inside: avoid; }
          tbody tr:nth-child(-n+2) { break-before: avoid; }
          .plan { break-inside: avoid; }
          .plan div, .scroll { border: 0; overflow: visible; }
          .plan svg { min-width: 0; max-height: 225mm; }
          .scroll table { font-size: 7.5pt; }
          .scroll caption { font-size: 10.5pt; }
          .scroll th, .scroll td { padding: .15rem .4rem .15rem 0; }
          .scroll thead th { font-size: 7pt; white-space: normal; }
          details::details-content { display: block; content-visibility: visible; block-size: auto; }
          summary { list-style: none; font-weight: 600; break-after: avoid; }
          a { text-decoration: none; }
        }
        """;
}
