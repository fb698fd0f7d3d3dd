// Reads a STEP or IGES file with OpenCASCADE and prints what it found, one fact a line: an outside reader for the tests of the writers.
//
//   surface-reader FILE [below HEIGHT] [FACE S T]...
//
// With HEIGHT the shape is cut at that z, and the area of what lies below is printed and the volume between it and
// the planes y = 0 and z = HEIGHT. For each FACE S T the point of that face's surface at (S, T) is printed, and the direction of its face normal.
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRepGProp_Domain.hxx>
#include <BRepGProp_Face.hxx>
#include <BRepGProp_Vinert.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <GeomLProp_SLProps.hxx>
#include <Geom_BSplineSurface.hxx>
#include <Geom_Plane.hxx>
#include <IGESControl_Reader.hxx>
#include <Interface_Static.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <cstdio>
#include <cstdlib>
#include <cstring>
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

Bnd_Box extent(const TopoDS_Shape& shape) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(shape, box, false, false);
    return box;
}

// The cones from a point where the plane y = 0 and the cut meet fill what lies between the shape and those two planes.
void below(const TopoDS_Shape& shape, double height) {
    const Bnd_Box box = extent(shape);
    const gp_Pnt low = box.CornerMin(), high = box.CornerMax();
    const TopoDS_Shape water = BRepPrimAPI_MakeBox(gp_Pnt(low.X() - 100, low.Y() - 100, low.Z() - 100), gp_Pnt(high.X() + 100, high.Y() + 100, height));
    const TopoDS_Shape wet = BRepAlgoAPI_Common(shape, water);
    GProp_GProps area;
    BRepGProp::SurfaceProperties(wet, area, 1e-10);
    const gp_Pnt meeting((low.X() + high.X()) / 2, 0, height);
    double volume = 0;
    for (TopExp_Explorer e(wet, TopAbs_FACE); e.More(); e.Next()) {
        BRepGProp_Face face(TopoDS::Face(e.Current()));
        BRepGProp_Domain bounds(TopoDS::Face(e.Current()));
        volume += BRepGProp_Vinert(face, bounds, meeting, meeting, 1e-10).Mass();
    }
    std::printf("below area %.12g volume %.12g\n", area.Mass(), volume);
}

template <class Reader>
TopoDS_Shape read(Reader reader, const char* path) {
    if (reader.ReadFile(path) != IFSelect_RetDone)
        return TopoDS_Shape();
    std::printf("roots %d\n", reader.NbRootsForTransfer());
    reader.TransferRoots();
    return reader.OneShape();
}

bool isStep(const char* path) {
    const char* ending = std::strrchr(path, '.');
    return ending != nullptr && std::strncmp(ending, ".st", 3) == 0;
}

}  // namespace

int main(int count, char** words) {
    const bool cut = count > 3 && std::strcmp(words[2], "below") == 0;
    const int places = cut ? 4 : 2;
    if (count < 2 || (count - places) % 3 != 0) {
        std::fprintf(stderr, "usage: surface-reader FILE [below HEIGHT] [FACE S T]...\n");
        return 2;
    }
    Interface_Static::SetCVal("xstep.cascade.unit", "MM");
    const TopoDS_Shape shape = isStep(words[1]) ? read(STEPControl_Reader(), words[1]) : read(IGESControl_Reader(), words[1]);
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

    const Bnd_Box box = extent(shape);
    std::printf("extent %.12g %.12g %.12g\n", box.CornerMax().X() - box.CornerMin().X(), box.CornerMax().Y() - box.CornerMin().Y(),
                box.CornerMax().Z() - box.CornerMin().Z());
    if (cut)
        below(shape, std::strtod(words[3], nullptr));

    for (int k = places; k < count; k += 3) {
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
