// Cuts a hull's faces by station planes with OpenCASCADE and prints how long each repeat took: the other side of the benchmark of the cuts.
//
//   section-cutter FILE.step REPEATS TOLERANCE X...
//
// TOLERANCE and the stations X are in mm. Two ways are timed, each through all stations, ending with points whose chords keep within
// TOLERANCE of the curve:
//   section      the general way, BRepAlgoAPI_Section of the skin's face and a plane
//   intersector  the leaner way, GeomAPI_IntSS of the skin's surface and a plane
// It prints the processor time of every repeat, "section 12.3" in ms, then the points of the last, "point section 0 x y z" with their station.
// Looser tolerances of the cut itself and leaving out its approximation were tried: they made neither way faster.
//
//   g++ -O2 -std=c++17 -w -I/usr/include/opencascade tests/Lines.Benchmarks/section-cutter.cpp -o tests/Lines.Benchmarks/bin/section-cutter \
//     -lTKernel -lTKMath -lTKG2d -lTKG3d -lTKGeomBase -lTKGeomAlgo -lTKBRep -lTKTopAlgo -lTKBO -lTKPrim -lTKShHealing \
//     -lTKXSBase -lTKSTEPBase -lTKSTEPAttr -lTKSTEP209 -lTKSTEP
#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Section.hxx>
#include <BRep_Tool.hxx>
#include <GCPnts_QuasiUniformDeflection.hxx>
#include <GeomAPI_IntSS.hxx>
#include <GeomAdaptor_Curve.hxx>
#include <Geom_Plane.hxx>
#include <Geom_Surface.hxx>
#include <Interface_Static.hxx>
#include <STEPControl_Reader.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

namespace {

using Points = std::vector<gp_Pnt>;

template <class Curve>
void lay(const Curve& curve, double tolerance, Points& points) {
    const GCPnts_QuasiUniformDeflection chords(curve, tolerance);
    for (int k = 1; chords.IsDone() && k <= chords.NbPoints(); k++)
        points.push_back(chords.Value(k));
}

gp_Pln station(double x) { return gp_Pln(gp_Pnt(x, 0, 0), gp_Dir(1, 0, 0)); }

Points section(const TopoDS_Face& skin, double x, double tolerance) {
    Points points;
    BRepAlgoAPI_Section cut(skin, station(x), Standard_False);
    cut.Approximation(Standard_True);
    cut.Build();
    for (TopExp_Explorer e(cut.Shape(), TopAbs_EDGE); e.More(); e.Next())
        lay(BRepAdaptor_Curve(TopoDS::Edge(e.Current())), tolerance, points);
    return points;
}

Points intersector(const TopoDS_Face& skin, double x, double tolerance) {
    Points points;
    const GeomAPI_IntSS cut(BRep_Tool::Surface(skin), new Geom_Plane(station(x)), tolerance / 10);
    for (int k = 1; cut.IsDone() && k <= cut.NbLines(); k++)
        lay(GeomAdaptor_Curve(cut.Line(k)), tolerance, points);
    return points;
}

template <class Way>
void measure(const char* name, Way way, const TopoDS_Face& skin, const std::vector<double>& stations, int repeats, double tolerance) {
    std::vector<Points> last;
    for (int r = 0; r < repeats; r++) {
        last.clear();
        const std::clock_t start = std::clock();
        for (const double x : stations)
            last.push_back(way(skin, x, tolerance));
        std::printf("%s %.6f\n", name, 1e3 * (std::clock() - start) / CLOCKS_PER_SEC);
    }
    for (std::size_t k = 0; k < last.size(); k++)
        for (const gp_Pnt& p : last[k])
            std::printf("point %s %zu %.9g %.9g %.9g\n", name, k, p.X(), p.Y(), p.Z());
}

}  // namespace

int main(int count, char** words) {
    if (count < 5) {
        std::fprintf(stderr, "usage: section-cutter FILE.step REPEATS TOLERANCE X...\n");
        return 2;
    }
    Interface_Static::SetCVal("xstep.cascade.unit", "MM");
    STEPControl_Reader reader;
    if (reader.ReadFile(words[1]) != IFSelect_RetDone)
        return 1;
    reader.TransferRoots();
    const TopExp_Explorer faces(reader.OneShape(), TopAbs_FACE);
    const TopoDS_Face skin = TopoDS::Face(faces.Current());
    const int repeats = std::atoi(words[2]);
    const double tolerance = std::strtod(words[3], nullptr);
    std::vector<double> stations;
    for (int k = 4; k < count; k++)
        stations.push_back(std::strtod(words[k], nullptr));
    measure("section", section, skin, stations, repeats, tolerance);
    measure("intersector", intersector, skin, stations, repeats, tolerance);
    return 0;
}
