// Reads a STEP file with OpenCASCADE and prints what it found, one fact a line: an outside reader for the tests of the STEP writer.
//
//   step-reader FILE [FACE S T]...
//
// For each FACE S T the point of that face's surface at (S, T) is printed, and the direction of its face normal.
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <GeomLProp_SLProps.hxx>
#include <Geom_BSplineSurface.hxx>
#include <Geom_Plane.hxx>
#include <Interface_Static.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <cstdio>
#include <cstdlib>
#include <vector>

namespace {

void describe(const TopoDS_Face& face, int number) {
    const Handle(Geom_Surface) surface = BRep_Tool::Surface(face);
    GProp_GProps area;
    BRepGProp::SurfaceProperties(face, area, 1e-10);
    std::printf("face %d area %.12g\n", number, area.Mass());
    const Handle(Geom_BSplineSurface) spline = Handle(Geom_BSplineSurface)::DownCast(surface);
    if (spline.IsNull()) {
        std::printf("face %d kind %s\n", number, Handle(Geom_Plane)::DownCast(surface).IsNull() ? "other" : "plane");
        return;
    }
    std::printf("face %d kind bspline degrees %d %d poles %d %d rational %d\n", number, spline->UDegree(), spline->VDegree(),
                spline->NbUPoles(), spline->NbVPoles(), spline->IsURational() || spline->IsVRational() ? 1 : 0);
    for (int i = 1; i <= spline->NbUPoles(); i++)
        for (int j = 1; j <= spline->NbVPoles(); j++) {
            const gp_Pnt p = spline->Pole(i, j);
            std::printf("pole %d %d %.17g %.17g %.17g\n", i - 1, j - 1, p.X(), p.Y(), p.Z());
        }
}

}  // namespace

int main(int count, char** words) {
    if (count < 2 || (count - 2) % 3 != 0) {
        std::fprintf(stderr, "usage: step-reader FILE [FACE S T]...\n");
        return 2;
    }
    Interface_Static::SetCVal("xstep.cascade.unit", "MM");
    STEPControl_Reader reader;
    if (reader.ReadFile(words[1]) != IFSelect_RetDone) {
        std::fprintf(stderr, "not read: %s\n", words[1]);
        return 1;
    }
    std::printf("roots %d\n", reader.NbRootsForTransfer());
    reader.TransferRoots();
    const TopoDS_Shape shape = reader.OneShape();
    if (shape.IsNull()) {
        std::fprintf(stderr, "no shape in %s\n", words[1]);
        return 1;
    }
    std::printf("valid %d\n", BRepCheck_Analyzer(shape).IsValid() ? 1 : 0);

    std::vector<TopoDS_Face> faces;
    for (TopExp_Explorer e(shape, TopAbs_FACE); e.More(); e.Next())
        faces.push_back(TopoDS::Face(e.Current()));
    std::printf("faces %zu\n", faces.size());
    TopTools_IndexedDataMapOfShapeListOfShape owners;
    TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, owners);
    int shared = 0, degenerate = 0;
    for (int i = 1; i <= owners.Extent(); i++) {
        shared += owners(i).Extent() > 1 ? 1 : 0;
        degenerate += BRep_Tool::Degenerated(TopoDS::Edge(owners.FindKey(i))) ? 1 : 0;
    }
    std::printf("edges %d shared %d degenerate %d\n", owners.Extent(), shared, degenerate);
    for (std::size_t i = 0; i < faces.size(); i++)
        describe(faces[i], static_cast<int>(i));

    for (int k = 2; k < count; k += 3) {
        const int face = std::atoi(words[k]);
        const double s = std::strtod(words[k + 1], nullptr), t = std::strtod(words[k + 2], nullptr);
        GeomLProp_SLProps at(BRep_Tool::Surface(faces.at(face)), s, t, 1, 1e-12);
        const gp_Pnt p = at.Value();
        gp_Vec n = at.D1U().Crossed(at.D1V());
        if (faces[face].Orientation() == TopAbs_REVERSED)
            n.Reverse();
        std::printf("point %.17g %.17g %.17g normal %.9g %.9g %.9g\n", p.X(), p.Y(), p.Z(), n.X(), n.Y(), n.Z());
    }
    return 0;
}
