using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;

namespace Lines.Plans.Exchange;

/// <summary>The hull as a STEP file: ISO 10303-21 text in the schema of ISO 10303-214, AUTOMOTIVE_DESIGN.</summary>
/// <remarks>
/// <para><b>Frame.</b> Hull frame in millimeters: x aft, y to starboard, z up. The starboard skin to the outside of planking, and the
/// starboard halves of a crowned deck and of a flat transom as faces that share their edges; an open hull has no deck.</para>
/// <para><b>Sign.</b> Face normals point out of the boat: the first parameter runs from keel to sheer and on to the centerplane of the deck, the second from bow to stern.</para>
/// <para><b>Accuracy.</b> The poles are those of the surface, written so that every double reads back the same.</para>
/// </remarks>
public static class StepFile
{
    /// <summary>Writes the hull.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="title">Title of the design: name of the product and of the file.</param>
    /// <returns>The text of the file, ASCII. The time stamp is left empty: the same hull gives the same bytes.</returns>
    public static string Write(HullSurface hull, string title)
    {
        ArgumentNullException.ThrowIfNull(hull);
        ArgumentNullException.ThrowIfNull(title);
        var entities = new StepEntities();
        var shape = new StepShape(entities);
        var context = Context(entities);
        var shell = entities.Add("OPEN_SHELL(''," + StepEntities.List(Faces(shape, hull)) + ")");
        var model = entities.Add("SHELL_BASED_SURFACE_MODEL('hull',(" + shell + "))");
        var frame = shape.Placement(default, new Vector3(0, 0, 1), new Vector3(1, 0, 0));
        var representation = entities.Add("MANIFOLD_SURFACE_SHAPE_REPRESENTATION('hull',(" + frame + "," + model + ")," + context + ")");
        Product(entities, title, representation);
        return Header(title, hull.Deck is null ? "skin" : "skin and deck") + "DATA;\n" + entities.Text + "ENDSEC;\nEND-ISO-10303-21;\n";
    }

    private static IEnumerable<string> Faces(StepShape shape, HullSurface hull)
    {
        var side = hull.Side;
        var stem = shape.Edge(side.V, Row(side, 0));
        var stern = shape.Edge(side.V, Row(side, side.U.Count - 1));
        var keel = shape.Edge(side.U, Column(side, 0));
        var sheer = shape.Edge(side.U, Column(side, side.V.Count - 1));
        var skin = shape.Surface(side.V, side.U, (i, j) => side.PoleAt(j, i));
        yield return shape.Face("starboard skin", skin, [(stem, true), (sheer, true), (stern, false), (keel, false)]);
        string? end = null;
        if (hull.Deck is { } deck)
        {
            end = shape.Edge(deck.V, Row(deck, deck.U.Count - 1));
            var surface = shape.Surface(deck.V, deck.U, (i, j) => deck.PoleAt(j, i));
            yield return shape.Face(
                "starboard deck", surface, [(shape.Edge(deck.V, Row(deck, 0)), true), (shape.Edge(deck.U, Column(deck, deck.V.Count - 1)), true), (end, false), (sheer, false)]);
        }

        if (hull.Transom is not { } plane)
            yield break;
        Point3 foot = side.PoleAt(side.U.Count - 1, 0), head = (hull.Deck ?? side) is var last ? last.PoleAt(last.U.Count - 1, last.V.Count - 1) : default;
        Point3 bottom = foot with { Y = 0 }, top = head with { Y = 0 };
        var flat = shape.Flat(bottom, plane.Normal, new Vector3(0, 1, 0));
        yield return shape.Face(
            "transom", flat, [(stern, true), (end, true), (shape.Straight(head, top), true), (shape.Straight(top, bottom), true), (shape.Straight(bottom, foot), true)]);
    }

    private static List<Point3> Row(BSplineSurface side, int i) => [.. Enumerable.Range(0, side.V.Count).Select(j => side.PoleAt(i, j))];

    private static List<Point3> Column(BSplineSurface side, int j) => [.. Enumerable.Range(0, side.U.Count).Select(i => side.PoleAt(i, j))];

    private static string Context(StepEntities entities)
    {
        var length = entities.Add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
        var angle = entities.Add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
        var solid = entities.Add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
        var accuracy = entities.Add(
            "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(" + StepEntities.Real(1000 * StepShape.SamePoint) + ")," + length
            + ",'distance_accuracy_value','points this close are one point')");
        return entities.Add(
            "(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((" + accuracy + "))GLOBAL_UNIT_ASSIGNED_CONTEXT(("
            + length + "," + angle + "," + solid + "))REPRESENTATION_CONTEXT('hull','3D'))");
    }

    private static void Product(StepEntities entities, string title, string representation)
    {
        var name = StepEntities.Quoted(title);
        var application = entities.Add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')");
        entities.Add("APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000," + application + ")");
        var productContext = entities.Add("PRODUCT_CONTEXT(''," + application + ",'mechanical')");
        var product = entities.Add("PRODUCT(" + name + "," + name + ",'',(" + productContext + "))");
        entities.Add("PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(" + product + "))");
        var formation = entities.Add("PRODUCT_DEFINITION_FORMATION('',''," + product + ")");
        var definitionContext = entities.Add("PRODUCT_DEFINITION_CONTEXT('part definition'," + application + ",'design')");
        var definition = entities.Add("PRODUCT_DEFINITION('design',''," + formation + "," + definitionContext + ")");
        var definitionShape = entities.Add("PRODUCT_DEFINITION_SHAPE('',''," + definition + ")");
        entities.Add("SHAPE_DEFINITION_REPRESENTATION(" + definitionShape + "," + representation + ")");
    }

    private static string Header(string title, string parts) =>
        "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('hull, starboard " + parts + " to the outside of planking, mm'),'2;1');\nFILE_NAME("
        + StepEntities.Quoted(title)
        + ",'',(''),(''),'Lines','Lines','');\nFILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;\n";
}
